import { expect, test } from '@playwright/test';
import { axeFaults } from './support/axe-faults.ts';
import { servedScreen } from './support/served-screen.ts';

const served = servedScreen();

test('ribbons stand under each other, a tap opens a unit, and from there a finger carries it', async ({ page }) => {
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
  await card.getByRole('button', { name: 'Carry it' }).tap();
  await expect(card).toHaveCount(0);
  const low = await page.getByRole('list', { name: 'Universe 2', exact: true }).boundingBox();
  if (low === null) throw new Error('universe 2 is not drawn');
  const says = page.getByRole('status');
  await page.touchscreen.tap(low.x + low.width - 8, low.y + low.height / 2);
  await expect(says).toContainText(/^Bar 1 · 2 would get 2:\d+/);
  const [, slot] = /2:(\d+)/.exec((await says.textContent()) ?? '') ?? [];
  await page.getByRole('button', { name: 'One slot lower' }).tap();
  await expect(says).toContainText(`would get 2:${Number(slot) - 1}`);
  expect(await axeFaults(page)).toEqual([]);
  await page.getByRole('button', { name: 'Leave it' }).tap();
  await expect(says).toContainText('Bar 1 · 2 stays at 1:');
  await page
    .getByRole('list', { name: 'Universe 1', exact: true })
    .getByRole('button', { name: /^Bar 1 · 2,/ })
    .tap();
  await card.getByRole('button', { name: 'Close' }).tap();
  await expect(card).toHaveCount(0);
});
