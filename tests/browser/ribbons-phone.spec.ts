import { expect, test } from '@playwright/test';
import { axeFaults } from './support/axe-faults.ts';
import { servedScreen } from './support/served-screen.ts';

const served = servedScreen();

test('ribbons stand under each other, and a tap opens a unit', async ({ page }) => {
  await page.goto(`${served.url}?universes`);
  await page.getByRole('button', { name: 'All ribbons' }).tap();
  const second = page.getByRole('textbox', { name: 'Label of universe 2' });
  const [ribbon, label] = await Promise.all([
    page.getByRole('list', { name: 'Universe 1', exact: true }).boundingBox(),
    second.boundingBox(),
  ]);
  if (ribbon === null || label === null) throw new Error('two ribbons are not drawn');
  expect(label.y).toBeGreaterThan(ribbon.y + ribbon.height);
  // Source: WCAG 2.1, success criterion 2.5.5.
  expect(label.height).toBeGreaterThanOrEqual(44);
  expect(await axeFaults(page)).toEqual([]);
  await page
    .getByRole('list', { name: 'Universe 1', exact: true })
    .getByRole('button', { name: /^Bar 1 · 1,/ })
    .tap();
  const card = page.getByRole('region', { name: 'Slots' });
  await expect(card.getByRole('heading', { name: 'Bar 1 · 1' })).toBeVisible();
  await card.getByRole('button', { name: 'Next unit' }).tap();
  await expect(card.getByRole('heading', { name: 'Bar 1 · 2' })).toBeVisible();
  await card.getByRole('button', { name: 'Close' }).tap();
  await expect(card).toHaveCount(0);
});
