import { expect, type Page, test } from '@playwright/test';
import { axeFaults } from './support/axe-faults.ts';
import { press } from './support/press.ts';
import { servedScreen } from './support/served-screen.ts';

const served = servedScreen();

test.beforeEach(async ({ page }) => {
  await page.goto(served.url);
  await page.getByRole('grid', { name: 'Patch sheet' }).focus();
});

/** The cell the cursor is in, as assistive technology is told. */
const cursor = (page: Page) =>
  page.evaluate(() => {
    const id = document.querySelector('[role="grid"]')?.getAttribute('aria-activedescendant') ?? '';
    const cell = document.getElementById(id);
    const row = cell?.closest('[role="row"]');
    return `${row?.querySelector('[data-column="position"]')?.textContent} ${row?.querySelector('[data-column="unit"]')?.textContent} ${cell?.dataset.column}`;
  });

const cell = (page: Page, channel: number, column: string) =>
  page
    .locator('[role="row"]')
    .filter({ has: page.locator('[data-column="channel"]', { hasText: new RegExp(`^${channel}(\\D|$)`) }) })
    .locator(`[data-column="${column}"]`);

const toAddressOf = async (page: Page, channel: number) => {
  await press(page, 'Control+f');
  await page.keyboard.type(String(channel));
  await press(page, 'Enter', 'Escape', 'Home', 'ArrowRight', 'ArrowRight', 'ArrowRight', 'ArrowRight', 'ArrowRight');
};

test('the keyboard goes everywhere in the sheet, and out of it', async ({ page }) => {
  expect(await cursor(page)).toBe('Front bridge 1 channel');
  await press(page, 'ArrowDown', 'ArrowRight');
  expect(await cursor(page)).toBe('Front bridge 2 position');
  await press(page, 'End');
  expect(await cursor(page)).toBe('Front bridge 2 firmware');
  await press(page, 'Tab');
  expect(await cursor(page)).toBe('Front bridge 3 channel');
  await press(page, 'Control+End');
  const last = await cursor(page);
  expect(last).toContain('firmware');
  await press(page, 'Control+Home');
  expect(await cursor(page)).toBe('Front bridge 1 channel');
  await press(page, 'PageDown');
  expect(await cursor(page)).not.toBe('Front bridge 1 channel');
  await press(page, 'Control+Home', 'Shift+ArrowDown', 'Shift+ArrowRight');
  await expect(page.locator('[role="gridcell"][aria-selected="true"]')).toHaveCount(4);
  await press(page, 'Escape', 'Tab');
  await expect(page.getByRole('grid')).not.toBeFocused();
});

test('typing writes over, F2 opens, Escape leaves, Ctrl and Enter writes into all, undo takes back mine', async ({
  page,
}) => {
  await press(page, 'Control+Home', 'End', 'ArrowLeft', 'ArrowLeft', 'ArrowLeft', 'ArrowLeft');
  expect(await cursor(page)).toBe('Front bridge 1 purpose');
  await page.keyboard.type('Key light');
  await press(page, 'Enter');
  await expect(cell(page, 1, 'purpose')).toHaveText('Key light');
  expect(await cursor(page)).toBe('Front bridge 2 purpose');
  await press(page, 'F2');
  await page.keyboard.type(' wide');
  await press(page, 'Escape');
  await expect(cell(page, 2, 'purpose')).toHaveText('Front light');
  await press(page, 'Shift+ArrowDown', 'Shift+ArrowDown');
  await page.keyboard.type('Warm');
  await press(page, 'Control+Enter');
  for (const channel of [2, 3, 4]) await expect(cell(page, channel, 'purpose')).toHaveText('Warm');
  await press(page, 'Control+z');
  for (const channel of [2, 3, 4]) await expect(cell(page, channel, 'purpose')).toHaveText('Front light');
  await press(page, 'Control+Shift+Z');
  await expect(cell(page, 3, 'purpose')).toHaveText('Warm');
  await press(page, 'Delete');
  for (const channel of [2, 3, 4]) await expect(cell(page, channel, 'purpose')).toHaveText('');
});

test('a clash is marked in both rows and in the margin, and its plan clears it after a look', async ({ page }) => {
  await toAddressOf(page, 104);
  await expect(cell(page, 104, 'address')).toHaveText(/1:347.*blocker/);
  await expect(cell(page, 105, 'address')).toHaveText(/1:359.*blocker/);
  await expect(page.getByRole('grid').getByText('are also Bar 1 · 5')).toBeVisible();
  await press(page, 'F9');
  const dialog = page.getByRole('dialog');
  await expect(dialog).toContainText('Clears 1 finding');
  await expect(dialog.getByRole('row', { name: /Bar 1 · 5/ })).toContainText('1:369');
  await press(page, 'Enter');
  await expect(dialog).toBeHidden();
  await expect(cell(page, 105, 'address')).toHaveText('1:369');
  await expect(page.getByRole('button', { name: '1 blocker' })).toBeVisible();
  await expect(page.getByRole('grid')).toBeFocused();
});

test('copies to and pastes from a spreadsheet without the clipboard interface', async ({ page }) => {
  await page.evaluate(() => Object.defineProperty(navigator, 'clipboard', { value: undefined }));
  await press(page, 'Control+Home', 'Shift+ArrowRight', 'Shift+ArrowRight', 'Shift+ArrowDown');
  const copied = await page.evaluate(() => {
    const data = new DataTransfer();
    document.activeElement?.dispatchEvent(
      new ClipboardEvent('copy', { clipboardData: data, bubbles: true, cancelable: true }),
    );
    return data.getData('text/plain');
  });
  expect(copied).toBe('1\tFront bridge\t1\n2\tFront bridge\t2\n');
  await press(page, 'Control+Home', 'End', 'ArrowLeft', 'ArrowLeft', 'ArrowLeft', 'ArrowLeft');
  await page.evaluate(() => {
    const data = new DataTransfer();
    data.setData('text/plain', 'Left\tblue\r\n"Two\nlines"\tred\r\n');
    document.activeElement?.dispatchEvent(
      new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true }),
    );
  });
  await expect(cell(page, 1, 'purpose')).toHaveText('Left');
  await expect(cell(page, 2, 'colour')).toHaveText('red');
});

test('the real keys of copy and paste reach the sheet', async ({ page }) => {
  await press(page, 'Control+Home', 'Control+c', 'ArrowDown', 'Control+v');
  await expect(cell(page, 1, 'unit')).toHaveCount(2);
  await press(page, 'Control+x');
  await expect(cell(page, 1, 'unit')).toHaveCount(1);
});

test('fills down, fills a series after a look, adds, duplicates and removes rows', async ({ page }) => {
  await press(page, 'Control+Home', 'Shift+ArrowDown', 'Shift+ArrowDown', 'Control+d');
  await expect(cell(page, 1, 'unit')).toHaveCount(3);
  await press(page, 'Control+Shift+D');
  await expect(page.getByRole('dialog')).toContainText('It changes 2 cells');
  await press(page, 'Enter');
  await expect(cell(page, 1, 'unit')).toHaveCount(1);
  await expect(cell(page, 3, 'unit')).toHaveText(/^3/);
  const rows = page.getByRole('grid');
  const count = Number(await rows.getAttribute('aria-rowcount'));
  await press(page, 'Alt+Enter');
  await expect(rows).toHaveAttribute('aria-rowcount', String(count + 1));
  // Nobody knows yet what the new unit weighs, at a position with a limit.
  expect(await cursor(page)).toMatch(/^Front bridge.* channel$/);
  await press(page, 'Control+Home', 'Alt+Shift+Enter');
  await expect(rows).toHaveAttribute('aria-rowcount', String(count + 2));
  await press(page, 'Control+Delete');
  await expect(rows).toHaveAttribute('aria-rowcount', String(count + 1));
});

test('offers the modes of the type, and takes one by keys', async ({ page }) => {
  await press(page, 'Control+Home', 'ArrowRight', 'ArrowRight', 'ArrowRight', 'ArrowRight');
  expect(await cursor(page)).toBe('Front bridge 1 mode');
  await page.keyboard.type('d');
  await expect(page.getByRole('listbox').getByRole('option')).toHaveText(['Direct 5']);
  await press(page, 'ArrowDown', 'Enter');
  await expect(cell(page, 1, 'mode')).toHaveText('Direct 5');
  await expect(cell(page, 1, 'footprint')).toHaveText('5');
});

test('sorts by a head, groups by universe, filters, and finds in any notation', async ({ page }) => {
  await page.getByRole('button', { name: 'Address', exact: true }).click();
  await expect(page.getByRole('columnheader', { name: /^Address$/ })).toHaveAttribute('aria-sort', 'ascending');
  await page.getByLabel('Group by').selectOption('universe');
  await expect(page.getByText('Universe 1 · Front of house, Bar 1', { exact: true })).toBeVisible();
  await page.getByRole('searchbox').fill('3/161');
  await press(page, 'Enter');
  await expect(page.getByText(/^1 of \d+$/)).toBeVisible();
  await page.getByRole('button', { name: 'Filter', exact: true }).click();
  await page.getByLabel('Only rows with findings').check();
  await expect(page.getByText(/rows of 152/)).toBeVisible();
  await press(page, 'Escape');
  await expect(page.getByRole('grid')).toBeFocused();
});

test('shows where others are, and tells a reader that nothing can be written', async ({ page }) => {
  await page.evaluate(() => {
    const screen = window as unknown as {
      link: { setPeople(people: unknown): void; setStatus(status: unknown): void };
      byChannel(n: number): { id: string };
    };
    const where = { fixture: screen.byChannel(3).id, field: 'purpose' };
    screen.link.setPeople([{ id: 5, name: 'Tomas', colour: 1, where }]);
    screen.link.setStatus({ state: 'read-only', detail: '' });
  });
  await expect(cell(page, 3, 'purpose')).toContainText('Tomas');
  await expect(page.getByText('You are a reader here')).toBeVisible();
  await expect(page.getByRole('grid')).toHaveAttribute('aria-readonly', 'true');
  await page.keyboard.type('9');
  await expect(page.getByText('Nothing was changed: you are a reader here')).toBeVisible();
});

test('the ribbon places the selected unit by keys', async ({ page }) => {
  await toAddressOf(page, 104);
  await press(page, 'F6');
  const room = page.getByRole('region', { name: 'Ribbon of the universe' });
  await expect(room.getByText('Free room of 22 slots:')).toBeVisible();
  const first = room.getByRole('button', { name: /^Place Bar 1 · 4 at/ }).first();
  const place = (await first.textContent()) ?? '';
  await first.focus();
  await press(page, 'Enter');
  await expect(cell(page, 104, 'address')).toHaveText(place);
  await expect(page.getByRole('grid')).toBeFocused();
  await press(page, 'F6', 'F6');
  await expect(page.getByRole('grid')).toBeFocused();
});

const openPanel = (page: Page, name: string) =>
  page.getByRole('toolbar', { name: 'Tools of the sheet' }).getByRole('button', { name, exact: true }).click();

test('axe finds nothing on the sheet, with a cell open, and before a plan is applied', async ({ page }) => {
  test.setTimeout(240_000);
  await toAddressOf(page, 104);
  await press(page, 'F2');
  expect(await axeFaults(page, { within: 'main' })).toEqual([]);
  await press(page, 'Escape', 'F9');
  expect(await axeFaults(page, { within: 'dialog' })).toEqual([]);
});

test('axe finds nothing in anything beside the sheet', async ({ page }) => {
  test.setTimeout(240_000);
  for (const panel of ['Findings', 'Filter', 'Columns', 'Plans', 'Types', 'Positions', 'Notes']) {
    await openPanel(page, panel);
    expect(await axeFaults(page, { within: 'section:has(> div > h2)' })).toEqual([]);
  }
  await openPanel(page, 'Keys');
  expect(await axeFaults(page, { within: 'dialog' })).toEqual([]);
});

test('everything can be read in the dark', async ({ page }) => {
  test.setTimeout(240_000);
  await page.emulateMedia({ colorScheme: 'dark' });
  await toAddressOf(page, 104);
  await openPanel(page, 'Findings');
  expect(await axeFaults(page, { within: 'main', rules: ['color-contrast'] })).toEqual([]);
});
