import { expect, type Page, test } from '@playwright/test';
import { axeFaults } from './support/axe-faults.ts';
import { press } from './support/press.ts';
import { servedScreen } from './support/served-screen.ts';

const served = servedScreen();

test.beforeEach(async ({ page }) => {
  await page.goto(`${served.url}?universes`);
  await page.getByRole('button', { name: 'All ribbons' }).click();
  await expect(ribbon(page, 1)).toBeVisible();
});

const ribbon = (page: Page, universe: number) => page.getByRole('list', { name: `Universe ${universe}`, exact: true });
const block = (page: Page, universe: number, name: RegExp) => ribbon(page, universe).getByRole('button', { name });
const status = (page: Page) => page.getByRole('status');

/** The middle of a slot of a ribbon, in pixels of the window. */
async function slotPoint(page: Page, universe: number, slot: number): Promise<{ x: number; y: number }> {
  const box = await ribbon(page, universe).boundingBox();
  if (box === null) throw new Error(`universe ${universe} is not drawn`);
  return { x: box.x + ((slot - 0.5) / 512) * box.width, y: box.y + box.height / 2 };
}

async function dragTo(page: Page, from: { x: number; y: number }, to: { x: number; y: number }): Promise<void> {
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(from.x + 8, from.y);
  await page.mouse.move(to.x, to.y, { steps: 4 });
}

test('a block is dragged by mouse to another universe, with words for what it meets on the way', async ({ page }) => {
  const name = /^Bar 1 · 5, slots 359 to /;
  const from = await slotPoint(page, 1, 360);
  await dragTo(page, from, await slotPoint(page, 1, 3));
  await expect(status(page)).toContainText('Bar 1 · 5 would get 1:2–');
  await expect(status(page)).toContainText(/it would meet \d+ units?, first Front bridge · 1\./);
  await expect(page.getByText(/^2 meets \d+$/)).toBeVisible();
  const end = await slotPoint(page, 1, 511);
  await page.mouse.move(end.x, end.y);
  await expect(status(page)).toContainText('past slot 512');
  await page.mouse.up();
  await expect(status(page)).toContainText('Choose a lower slot or another universe.');
  await expect(block(page, 1, name)).toBeFocused();

  await dragTo(page, from, await slotPoint(page, 5, 101));
  await expect(status(page)).toContainText('the slots are free');
  await press(page, 'Escape');
  await page.mouse.up();
  await expect(status(page)).toHaveText('Bar 1 · 5 stays at 1:359.');
  await expect(block(page, 1, name)).toBeVisible();

  await dragTo(page, from, await slotPoint(page, 5, 101));
  await page.mouse.up();
  await expect(status(page)).toHaveText('Bar 1 · 5 moved from 1:359 to 5:100.');
  await expect(block(page, 5, /^Bar 1 · 5, slots 100 to /)).toBeFocused();
  await expect(page.getByRole('region', { name: 'Slots' })).toHaveCount(0);
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(block(page, 1, name)).toBeFocused();
});

test('a block is moved by keyboard alone, and one that clashes may be put', async ({ page }) => {
  await block(page, 1, /^Front bridge · 1,/).focus();
  await press(page, 'ArrowRight', 'ArrowLeft', 'm');
  await expect(status(page)).toContainText('Front bridge · 1 would get 1:1–');
  await press(page, 'PageDown', 'ArrowLeft', 'Control+ArrowDown');
  await expect(status(page)).toContainText('Front bridge · 1 would get 2:10–');
  await press(page, 'Escape');
  await expect(status(page)).toHaveText('Front bridge · 1 stays at 1:1.');
  await press(page, 'Enter', 'ArrowRight');
  await expect(status(page)).toContainText('it would meet 1 unit, first Front bridge · 2.');
  await press(page, 'Enter');
  await expect(status(page)).toHaveText('Front bridge · 1 moved from 1:1 to 1:2.');
  await expect(block(page, 1, /^Front bridge · 1, slots 2 to /)).toBeFocused();
  await press(page, 'Control+z');
  await expect(block(page, 1, /^Front bridge · 1, slots 1 to /)).toBeFocused();
  await press(page, 'Space');
  const card = page.getByRole('region', { name: 'Slots' });
  await expect(card.getByRole('heading', { name: 'Front bridge · 1' })).toBeVisible();
  expect(await axeFaults(page)).toEqual([]);
  await press(page, 'Escape');
  await expect(block(page, 1, /^Front bridge · 1,/)).toBeFocused();
  await press(page, 'm', 'Control+ArrowDown');
  expect(await axeFaults(page)).toEqual([]);
});

test('a ribbon leads to its slots, its label is written here, and a reader carries nothing', async ({ page }) => {
  await page.getByRole('textbox', { name: 'Label of universe 2' }).fill('Balcony');
  await press(page, 'Enter');
  await page.getByRole('button', { name: 'Universe 2, slot by slot' }).click();
  await expect(page.getByRole('grid', { name: 'Slots of universe 2' })).toBeVisible();
  await expect(page.getByRole('option', { selected: true })).toContainText('Balcony');
  await page.getByRole('button', { name: 'All ribbons' }).click();
  await page.evaluate(() => Object(window).link.setStatus({ state: 'read-only', detail: '' }));
  await expect(page.getByText('You are a reader here: blocks stay where they are.')).toBeVisible();
  await dragTo(page, await slotPoint(page, 1, 3), await slotPoint(page, 2, 101));
  await page.mouse.up();
  await expect(block(page, 1, /^Front bridge · 1, slots 1 to /)).toBeVisible();
  await block(page, 1, /^Front bridge · 2,/).focus();
  await press(page, 'm');
  await expect(status(page)).toContainText('you are a reader here');
  await press(page, 'Enter');
  await expect(page.getByRole('region', { name: 'Slots' })).toBeVisible();
});
