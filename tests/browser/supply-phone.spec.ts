import { expect, test } from '@playwright/test';
import { axeFaults } from './support/axe-faults.ts';
import { servedScreen } from './support/served-screen.ts';

/** What a thumb hits, in CSS pixels. Source: WCAG 2.1, success criterion 2.5.5. */
const TARGET = 44;

const served = servedScreen();

test.use({ colorScheme: 'dark' });

test('supplies, circuits and weights are read and changed on a phone, in the dark, without scrolling sideways', async ({
  page,
}) => {
  await page.goto(`${served.url}?supply`);
  const circuit = page.getByRole('region', { name: 'FB-1', exact: true });
  // Four profiles of 245 W at a power factor of 0.95: 245 / (230 × 0.95) × 4 = 4.485 A.
  await expect(circuit).toContainText('4.49 A of 16 A · 28 %');
  expect(await axeFaults(page)).toEqual([]);
  const cell = page.getByRole('textbox', { name: 'Amps of the breaker of FB-1' });
  expect((await cell.boundingBox())?.height).toBeGreaterThanOrEqual(TARGET);
  await cell.fill('4');
  await cell.press('Enter');
  await expect(circuit).toContainText('4.49 A of 4 A · 112 % · 0.49 A over');
  const unit = circuit.getByRole('button', { name: 'Front bridge · 1', exact: true });
  expect((await unit.boundingBox())?.height).toBeGreaterThanOrEqual(TARGET);
  await unit.tap();
  await expect(page.getByRole('region', { name: 'Chosen units' })).toContainText('1 unit chosen');
  const [wide, room] = await page.evaluate(() => [document.documentElement.scrollWidth, window.innerWidth]);
  expect(wide).toBeLessThanOrEqual(room ?? 0);
});

test('the loads of a unit are read beside the sheet on a phone', async ({ page }) => {
  await page.goto(served.url);
  await page.getByText('Tools of the sheet').tap();
  await page.getByRole('toolbar').getByRole('button', { name: 'Loads', exact: true }).tap();
  await expect(page.getByRole('region', { name: 'Circuits' })).toContainText('FB-1');
  expect(await axeFaults(page)).toEqual([]);
  const [wide, room] = await page.evaluate(() => [document.documentElement.scrollWidth, window.innerWidth]);
  expect(wide).toBeLessThanOrEqual(room ?? 0);
});
