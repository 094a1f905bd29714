import { expect, type Page, test } from '@playwright/test';
import { axeFaults } from './support/axe-faults.ts';
import { press } from './support/press.ts';
import { servedScreen } from './support/served-screen.ts';

const served = servedScreen();

test.beforeEach(async ({ page }) => {
  await page.goto(served.url);
  await page.getByRole('grid', { name: 'Patch sheet' }).focus();
});

const openPlans = (page: Page) =>
  page.getByRole('toolbar', { name: 'Tools of the sheet' }).getByRole('button', { name: 'Plans', exact: true }).click();

/** How many clashes and runs past the end the sheet counts, from its own store. */
const blockers = (page: Page) =>
  page.evaluate(() => {
    const { store } = window as never as { store: { findings(): readonly { rule: string }[] } };
    const isClash = ({ rule }: { rule: string }) => rule === 'slots-claimed-twice' || rule === 'past-the-end';
    return store.findings().filter(isClash).length;
  });

test('every clash is cleared at once, with what each move costs, and taken back', async ({ page }) => {
  const before = await blockers(page);
  expect(before).toBeGreaterThan(0);
  await openPlans(page);
  await page.getByLabel('Hardest to reach').selectOption({ label: 'Front bridge' });
  await page.getByRole('button', { name: 'Clear every clash' }).click();
  const dialog = page.getByRole('dialog', { name: 'Clear every clash' });
  await expect(dialog.getByText(/that costs \d+, counting 1/)).toBeVisible();
  await expect(dialog.getByText('Nothing that clears as much costs less.')).toBeVisible();
  await expect(dialog.getByRole('columnheader', { name: 'Cost' })).toBeVisible();
  expect(await axeFaults(page, { within: 'dialog' })).toEqual([]);
  await dialog.getByRole('button', { name: 'Apply' }).click();
  await expect(dialog).toBeHidden();
  expect(await blockers(page)).toBe(0);
  await page.getByRole('button', { name: 'Clear every clash' }).click();
  await expect(page.getByText('Nothing would change: it is so already.')).toBeVisible();
  await page.getByRole('grid', { name: 'Patch sheet' }).focus();
  await press(page, 'Control+z');
  expect(await blockers(page)).toBe(before);
});

test('the selected units find room where they are asked to, and spare room is counted', async ({ page }) => {
  await press(page, 'Control+Home', ...new Array<string>(5).fill('Shift+ArrowDown'));
  await openPlans(page);
  await expect(page.getByText(/^\d+ more of .+ fit: \d+ in universe/)).toBeVisible();
  await page.getByLabel('Keep together').selectOption({ label: 'the units of a position' });
  await page.getByLabel('Start on').selectOption({ label: 'every 32nd slot: 1, 33, 65, …' });
  await page.getByLabel('Only in universes').fill('9-');
  await expect(page.getByText('These are no universes.')).toBeVisible();
  await expect(page.getByRole('button', { name: 'Find room for the selected units' })).toBeDisabled();
  await page.getByLabel('Only in universes').fill('9-12');
  await page.getByRole('button', { name: 'Find room for the selected units' }).click();
  const dialog = page.getByRole('dialog', { name: 'Find room for units' });
  await expect(dialog.getByText('The units come to lie in universe 9.')).toBeVisible();
  await expect(dialog.getByText('1 of these is used by nobody else; fewer are not possible.')).toBeVisible();
  await dialog.getByRole('button', { name: 'Apply' }).click();
  await expect(page.locator('[data-column="address"]', { hasText: /^9:(1|33|65|97|129|161)$/ })).toHaveCount(6);
});
