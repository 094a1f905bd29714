import { expect, type Page, test } from '@playwright/test';
import { axeFaults } from './support/axe-faults.ts';
import { servedScreen } from './support/served-screen.ts';

/** What a thumb hits, in CSS pixels. Source: WCAG 2.1, success criterion 2.5.5. */
const TARGET = 44;

const served = servedScreen();

const smallTargets = (page: Page) =>
  page.evaluate((target) => {
    const taps = [...document.querySelectorAll('button, select, a, [aria-selected]')].filter(
      (element) => element.checkVisibility() && element.closest('ul[aria-label^="Universe"]') === null,
    );
    const sizes = taps.map((element) => ({ name: element.textContent, ...element.getBoundingClientRect().toJSON() }));
    return sizes.filter(({ height }) => height > 0 && height < target).map(({ name, height }) => `${name} ${height}`);
  }, TARGET);

test('a universe is chosen from the device’s own list, and a tap on a slot opens its unit', async ({ page }) => {
  await page.goto(`${served.url}?universes`);
  await expect(page.getByRole('listbox')).toHaveCount(0);
  await page.getByLabel('Universe', { exact: true }).selectOption({ label: '2 Bars 2 and 3: 480 used · 32 free' });
  const grid = page.getByRole('grid', { name: 'Slots of universe 2' });
  await expect(grid).toHaveAttribute('aria-rowcount', '513');
  expect(await axeFaults(page)).toEqual([]);
  expect(await smallTargets(page)).toEqual([]);
  await grid.getByRole('row').nth(3).tap();
  const card = page.getByRole('region', { name: 'Slots' });
  await expect(card.locator('tr[aria-current="true"]')).toContainText('2:3');
  expect(await axeFaults(page)).toEqual([]);
  expect(await smallTargets(page)).toEqual([]);
  await card.getByRole('button', { name: 'Close' }).tap();
  await expect(card).toHaveCount(0);
});

test('the slots of a unit open from the tools of the sheet', async ({ page }) => {
  await page.goto(served.url);
  await page.getByRole('button', { name: /Front bridge · 1\b/ }).tap();
  await page.getByText('Tools of the sheet').tap();
  await page.getByRole('button', { name: 'Slots', exact: true }).tap();
  const card = page.getByRole('region', { name: 'Slots' });
  await expect(card.getByRole('heading', { name: 'Front bridge · 1' })).toBeVisible();
  await expect(card.getByRole('row', { name: /^1:1 1 Dimmer coarse/ })).toBeVisible();
  await card.getByRole('button', { name: 'Next unit' }).tap();
  await expect(card.getByRole('heading', { name: 'Front bridge · 2' })).toBeVisible();
});
