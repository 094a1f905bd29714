import { expect, type Page, test } from '@playwright/test';
import { axeFaults } from './support/axe-faults.ts';
import { servedScreen } from './support/served-screen.ts';

const served = servedScreen();

/** What is open beside the sheet. */
const PANEL = 'section:has(> div > h2)';

const openPanel = (page: Page, name: string) =>
  page.getByRole('toolbar', { name: 'Tools of the sheet' }).getByRole('button', { name, exact: true }).click();

const circuit = (page: Page, name: string) =>
  page
    .getByRole('region', { name: 'Circuits' })
    .getByRole('listitem')
    .filter({ has: page.getByRole('heading', { name: new RegExp(`^${name}\\b`) }) });

test('what circuits carry, by the rules a person chooses, and what nobody knows', async ({ page }) => {
  await page.goto(served.url);
  await openPanel(page, 'Loads');
  // Four profiles of 245 W at a power factor of 0.95: 245 / (230 × 0.95) × 4 = 4.485 A.
  await expect(circuit(page, 'FB-1')).toContainText('4.5 A · 980 W');
  await expect(circuit(page, 'FB-1')).toContainText('4 units · at 230 V, taking all of a breaker’s rating');
  await expect(page.getByText(/a licensed electrician has the last word/)).toBeVisible();
  await expect(page.getByText(/a competent rigger has the last word/)).toBeVisible();
  expect(await axeFaults(page, { within: PANEL })).toEqual([]);

  await page.getByLabel('Nominal voltage').selectOption('120 V');
  await page.getByLabel('Loads of three hours or more may take').selectOption('80 % of a breaker’s rating');
  // 245 / (120 × 0.95) × 4 = 8.596 A, and 8.596 / 0.8 = 10.75 A.
  await expect(circuit(page, 'FB-1')).toContainText('8.6 A · 980 W');
  await expect(circuit(page, 'FB-1')).toContainText('asks for a rating of at least 10.7 A');
  await expect(circuit(page, 'BL-1')).toContainText('4 units not made for 120 V, by their manuals');
  await page.reload();
  await openPanel(page, 'Loads');
  await expect(circuit(page, 'FB-1')).toContainText('8.6 A · 980 W');

  // 16 profiles of 8.6 kg.
  const bridge = page.getByRole('region', { name: 'Weight by position' }).getByRole('listitem').first();
  await expect(bridge).toContainText('Front bridge');
  await expect(bridge).toContainText('137.6 kg');
  await circuit(page, 'BL-1').getByRole('button', { name: 'Box left · 2', exact: true }).click();
  await expect(
    page.locator('[role="row"][aria-selected="true"], [role="row"]:has([aria-selected="true"])'),
  ).toContainText('Box left');
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
