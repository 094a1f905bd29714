import { expect, type Page, test } from '@playwright/test';
import { axeFaults } from './support/axe-faults.ts';
import { servedScreen } from './support/served-screen.ts';

const served = servedScreen();

/** What is open beside the sheet. */
const PANEL = 'section:has(> div > h2)';

const openPanel = (page: Page, name: string) =>
  page.getByRole('toolbar', { name: 'Tools of the sheet' }).getByRole('button', { name, exact: true }).click();

test('what feeds the selected unit and what hangs where it does, and another circuit for it', async ({ page }) => {
  await page.goto(served.url);
  await openPanel(page, 'Loads');
  const find = page.getByLabel('Find a unit, channel or address');
  await find.fill('1');
  await find.press('Enter');
  const circuits = page.getByRole('region', { name: 'Circuits' });
  // Four profiles of 245 W at a power factor of 0.95: 245 / (230 × 0.95) × 4 = 4.485 A.
  await expect(circuits).toContainText('FB-1');
  await expect(circuits).toContainText('4.49 A of 16 A · 28 %');
  // 16 profiles of 8.6 kg, and 60 kg that are no units.
  await expect(page.getByRole('region', { name: 'Positions' })).toContainText('197.6 kg of 320 kg · 62 %');
  await expect(page.getByRole('region', { name: 'Positions' })).toContainText('Hollis Brandreth, rigger allows 320 kg');
  await expect(page.getByText(/a licensed electrician has the last word/)).toBeVisible();
  await expect(page.getByText(/a competent rigger has the last word/)).toBeVisible();
  expect(await axeFaults(page, { within: PANEL })).toEqual([]);

  await page.getByLabel('Put the selected units on circuit').fill('FB-2');
  await page.getByRole('button', { name: 'Look at it' }).click();
  await page.getByRole('dialog').getByRole('button', { name: 'Apply' }).click();
  await expect(circuits).toContainText('FB-2');
  await expect(circuits).toContainText('5.61 A of 16 A · 35 %');
});

test('the rules of the venue hold for every figure of the page', async ({ page }) => {
  await page.goto(`${served.url}?supply`);
  const circuit = (name: string) => page.getByRole('region', { name, exact: true });
  await page.getByLabel('Loads of three hours or more may take').selectOption('80 % of a breaker’s rating');
  await expect(circuit('BL-1')).toContainText(
    '16 A for hours: 80 % of a breaker’s rating, by the playhouse’s own rules',
  );
  await expect(circuit('BL-1')).toContainText('draws 17.39 A, more than the 80 % of 20 A');
  await page.getByRole('textbox', { name: 'Volts to neutral of Stage main' }).fill('120');
  await page.getByRole('textbox', { name: 'Volts to neutral of Stage main' }).press('Enter');
  // 245 / (120 × 0.95) × 4 = 8.596 A.
  await expect(circuit('FB-1')).toContainText('8.6 A of 16 A');
  await expect(circuit('BL-1')).toContainText(
    'Circuit “BL-1” is at 120 V, for which by their manuals these are not made',
  );
  await page.emulateMedia({ colorScheme: 'dark' });
  expect(await axeFaults(page)).toEqual([]);
});

test('how the switches of a unit stand for its address', async ({ page }) => {
  await page.goto(served.url);
  const find = page.getByLabel('Find a unit, channel or address');
  await find.fill('181');
  await find.press('Enter');
  await openPanel(page, 'Slots');
  // 181 = 128 + 32 + 16 + 4 + 1.
  const list = page.getByRole('list', { name: 'Address switches: For 3:181' });
  const stands = [1, 2, 3, 4, 5, 6, 7, 8, 9].map((n) => `Switch ${n}${[1, 3, 5, 6, 8].includes(n) ? 'ON' : 'OFF'}`);
  await expect(list.getByRole('listitem')).toHaveText(stands);
  await expect(page.getByText('On: 1, 3, 5, 6, 8')).toBeVisible();
  await expect(page.getByText(/hold the address\. Check it on the unit/)).toBeVisible();
  expect(await axeFaults(page, { within: PANEL })).toEqual([]);

  // A scroller's switches hold one less: 4:381 is 380 = 256 + 64 + 32 + 16 + 8 + 4.
  await find.fill('271');
  await find.press('Enter');
  await expect(page.getByRole('list', { name: 'Address switches: For 4:381, break 2' })).toBeVisible();
  await expect(page.getByText('On: 3, 4, 5, 6, 7, 9')).toBeVisible();
  await page.emulateMedia({ colorScheme: 'dark' });
  expect(await axeFaults(page, { within: PANEL })).toEqual([]);
});
