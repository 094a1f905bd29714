import { readFileSync } from 'node:fs';
import { expect, type Page, test } from '@playwright/test';
import { parse } from 'csv-parse/sync';
import { axeFaults } from './support/axe-faults.ts';
import { enterDemo, fresh, makeRig } from './support/doors.ts';
import { press } from './support/press.ts';
import { watchConsole } from './support/watch-console.ts';

async function openDemoRig(page: Page): Promise<void> {
  await enterDemo(page, 'technician');
  await page.getByRole('link', { name: 'The Lantern Tide' }).first().click();
  await page.getByRole('grid', { name: 'Patch sheet' }).waitFor();
}

const toUniverses = (page: Page) =>
  page.getByRole('navigation', { name: 'Pages of this rig' }).getByRole('link', { name: 'Universes' }).press('Enter');

const slots = (page: Page, universe: number) => page.getByRole('grid', { name: `Slots of universe ${universe}` });

/** The line the cursor is in, as assistive technology is told: its cells that are not empty. */
const line = (page: Page) =>
  page.evaluate(() => {
    const id = document.querySelector('[role="grid"]')?.getAttribute('aria-activedescendant') ?? '';
    const cells = [...(document.getElementById(id)?.querySelectorAll<HTMLElement>('[role="gridcell"]') ?? [])];
    return cells.map((cell) => cell.textContent.replace(/\s+/g, ' ').trim()).filter((text) => text !== '');
  });

test('the demo’s universes name every slot: on screen by keyboard alone, and in the file', async ({ page }) => {
  const complaints = watchConsole(page);
  await openDemoRig(page);
  await toUniverses(page);
  await expect(slots(page, 1)).toBeFocused();
  expect((await line(page)).slice(0, 2)).toEqual(['1', 'Front bridge · 1']);
  await press(page, 'End');
  expect(await line(page)).toEqual(['512', 'free']);
  await press(page, 'Home', 'ArrowDown', 'ArrowDown', 'Enter');
  const card = page.getByRole('region', { name: 'Slots' });
  await expect(card.getByRole('heading', { name: 'Front bridge · 1' })).toBeVisible();
  await expect(card.getByText('It gets hot.')).toBeVisible();
  await expect(card.locator('tr[aria-current="true"]')).toContainText('1:3');
  expect(await axeFaults(page)).toEqual([]);
  await press(page, 'Escape');
  await expect(card).toHaveCount(0);
  await expect(slots(page, 1)).toBeFocused();

  await press(page, 'Shift+Tab');
  for (let back = 0; back < 8; back++) {
    if ((await page.evaluate(() => document.activeElement?.getAttribute('role'))) === 'listbox') break;
    await press(page, 'Shift+Tab');
  }
  await press(page, 'ArrowDown');
  await expect(page.getByRole('heading', { name: 'Universe 2' })).toBeVisible();

  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('link', { name: 'Take out every slot as CSV' }).press('Enter'),
  ]);
  expect(download.suggestedFilename()).toMatch(/^the-lantern-tide-universe-slots-\d{4}-\d\d-\d\d\.csv$/);
  const records: string[][] = parse(readFileSync(await download.path()), { bom: true, relax_column_count: true });
  const head = records.findIndex(([first]) => first === 'Universe');
  const end = records.findIndex(([first]) => first === 'End of list');
  const at = (heading: string) => records[head]?.indexOf(heading) ?? -1;
  const rows = records.slice(head + 1, end).filter((row) => row.some((cell) => cell !== ''));
  const places = new Set(rows.map((row) => `${row[at('Universe')]}:${row[at('Slot')]}`));
  expect(places.size % 512).toBe(0);
  expect(places.size).toBeGreaterThanOrEqual(4 * 512);
  const used = rows.filter((row) => row[at('State')] !== 'free');
  expect(used.length).toBeGreaterThan(1500);
  expect(used.filter((row) => /^(|Not known)$/.test(row[at('What it does')] ?? ''))).toEqual([]);
  expect(new Set(used.map((row) => row[at('Byte')]))).toEqual(new Set(['', 'coarse', 'fine']));
  expect(rows.filter((row) => row[at('State')] === 'claimed twice').length).toBeGreaterThan(0);
  const cautions = records.slice(end).filter(([mark]) => mark === 'Caution');
  expect(cautions.at(-1)?.[2]).toContain('the responsible person have the last word');
  expect(complaints).toEqual([]);
});

test('what is claimed twice is said in words, with both units', async ({ page }) => {
  await openDemoRig(page);
  await toUniverses(page);
  await page
    .getByRole('list', { name: 'Universe 1' })
    .getByRole('button', { name: /^Bar 1 · 5,/ })
    .click();
  const card = page.getByRole('region', { name: 'Slots' });
  await expect(card.getByRole('heading', { name: 'Bar 1 · 5' })).toBeVisible();
  const [slot, unit] = await line(page);
  expect(unit).toBe('Bar 1 · 5');
  const clashing = slots(page, 1)
    .getByRole('row')
    .filter({ has: page.getByText(slot ?? '?', { exact: true }) });
  await expect(clashing).toHaveCount(2);
  await expect(clashing.nth(0)).toContainText('claimed twice');
  await expect(clashing.nth(1)).toContainText('claimed twice');
});

test('the slots of a row stand beside the sheet by one key, and follow the row', async ({ page }) => {
  await openDemoRig(page);
  await page.getByRole('grid', { name: 'Patch sheet' }).focus();
  await press(page, 'Control+Home', 'F4');
  const card = page.getByRole('region', { name: 'Slots' });
  await expect(card.getByRole('heading', { name: 'Front bridge · 1' })).toBeVisible();
  await expect(card.getByRole('row', { name: /^1:2 2 Dimmer fine/ })).toBeVisible();
  await expect(card.getByText('129–255')).toBeVisible();
  expect(await axeFaults(page)).toEqual([]);
  await card.getByRole('button', { name: 'Next unit' }).press('Enter');
  await expect(card.getByRole('heading', { name: 'Front bridge · 2' })).toBeVisible();
  await press(page, 'Escape');
  await expect(card).toHaveCount(0);
  await expect(page.getByRole('grid', { name: 'Patch sheet' })).toBeFocused();
});

test('a mode that nobody took from the library is said to be not known, with the way out', async ({ page }) => {
  const complaints = watchConsole(page);
  await enterDemo(page, 'designer');
  const path = await makeRig(page, fresh('Unknown'));
  await page.getByRole('navigation').getByRole('link', { name: 'Universes' }).click();
  await expect(page.getByText('No unit has an address yet.')).toBeVisible();
  await page.getByRole('navigation').getByRole('link', { name: 'Lists in' }).click();
  const list = 'Position\tUnit\tType\tMode\tFootprint\tAddress\nBar\t1\tNobody’s lamp\tTwo\t2\t3:7';
  await page.getByLabel('Or paste the list').fill(list);
  await page.getByRole('button', { name: 'Read what I pasted' }).click();
  await page.getByRole('button', { name: 'Bring in 1 fixture' }).click();
  await page.waitForURL(`**${path}`);
  await toUniverses(page);
  await expect(slots(page, 3)).toBeFocused();
  await press(page, 'ArrowDown', 'ArrowDown', 'ArrowDown', 'ArrowDown', 'ArrowDown', 'ArrowDown', 'ArrowDown');
  expect(await line(page)).toEqual(['8', 'Bar · 1', 'Not known']);
  await press(page, 'Enter');
  await expect(page.getByText('take the type from the library')).toBeVisible();
  expect(complaints).toEqual([]);
});
