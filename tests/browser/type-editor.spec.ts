import { type Browser, expect, type Page, test } from '@playwright/test';
import { axeFaults } from './support/axe-faults.ts';
import { enterDemo, fresh } from './support/doors.ts';
import { press } from './support/press.ts';
import { watchConsole } from './support/watch-console.ts';

/**
 * A chart as manuals print it, of an invented unit: 20 slots, some of them coarse and fine, values below their slot, a
 * page’s header among them.
 */
const CHART = `Heron 20 user manual                          Page 14
Ch  Function            Value     Description
1   Pan                 0-255     0 to 540 degrees
2   Pan fine            0-255
3   Tilt                0-255     0 to 270 degrees
4   Tilt fine           0-255
5   Pan/Tilt speed      0-255     fast to slow
6   Dimmer              0-255     0 to 100 %
7   Dimmer fine         0-255
8   Shutter / strobe    0-10      Closed
                        11-127    Strobe, slow to fast
                        128-255   Open
9   Red                 0-255
10  Green               0-255
11  Blue                0-255
12  White               0-255
13  CTO                 0-255
14  Colour macros       0-9       No macro
                        10-255    Macro 1 to 20
15  Zoom                0-255     wide to narrow
16  Focus               0-255
17  Prism               0-127     Out
                        128-255   In
18  Prism rotation      0-255
19  Frost               0-255
20  Control             0-99      No function
                        100-149   Reset
                        150-255   No function
`;

const grid = (page: Page) => page.getByRole('grid', { name: 'Slot chart' });

const cell = (page: Page, row: number, column: string) =>
  grid(page).getByRole('row').nth(row).locator(`[data-column="${column}"]`);

/** Pastes as a person does: the text arrives in one event, with the clipboard behind it. */
const paste = (page: Page, text: string) =>
  page.evaluate((plain) => {
    const data = new DataTransfer();
    data.setData('text/plain', plain);
    const place = document.activeElement;
    const event = new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true });
    if (place?.dispatchEvent(event)) document.execCommand('insertText', false, plain);
  }, text);

/** Begins a new type in the library of a crew of the demo. */
async function beginType(page: Page, crew = 'demo-touring'): Promise<string> {
  await page.goto(new URL(`/crews/${crew}/types`, page.url()).href);
  await page.getByRole('button', { name: 'Write a new type' }).press('Enter');
  await page.waitForURL('**/drafts/*');
  await expect(page.getByLabel('Maker')).toBeFocused();
  return new URL(page.url()).pathname;
}

async function sit(browser: Browser, as: 'designer' | 'technician', base: string) {
  const page = await (await browser.newContext()).newPage();
  const complaints = watchConsole(page);
  await enterDemo(page, as, base);
  return { page, complaints };
}

const accessible = async (page: Page) => {
  expect(await axeFaults(page)).toEqual([]);
};

const saved = (page: Page) => expect(page.getByText('saved', { exact: true })).toBeVisible();

test('by keyboard alone a 20-slot chart from a manual becomes a type of the library in under two minutes', async ({
  page,
}) => {
  const complaints = watchConsole(page);
  await enterDemo(page, 'designer');
  const model = fresh('Heron');
  const began = Date.now();
  await beginType(page);
  await page.keyboard.type('Curlew Stage');
  await press(page, 'Tab');
  await page.keyboard.type(model);
  await press(page, 'Tab', 'Tab', 'Tab', 'Tab');
  await expect(page.getByLabel('The chart, as copied from the manual')).toBeFocused();
  await paste(page, CHART);
  await expect(page.getByText('17 rows · 17 guesses to confirm afterwards · 1 line left out')).toBeVisible();
  await expect(page.getByRole('button', { name: 'Take 17 rows' })).toBeFocused();
  await press(page, 'Enter');
  await expect(grid(page)).toBeFocused();
  await expect(cell(page, 1, 'attribute')).toContainText('Pan');
  for (let left = 17; left > 0; left--) {
    await expect(page.getByText(`${left} ${left === 1 ? 'guess' : 'guesses'} to confirm`)).toBeVisible();
    await press(page, 'F9');
  }
  await expect(page.getByText('Every attribute is confirmed.')).toBeVisible();
  await expect(page.getByRole('list', { name: 'Slots of break 1' }).getByRole('listitem')).toHaveCount(20);
  await accessible(page);
  await saved(page);
  await press(page, 'Escape', 'Tab', 'Tab');
  await expect(page.getByRole('button', { name: 'Publish this type' })).toBeFocused();
  await press(page, 'Enter');
  await page.keyboard.type('From the manual');
  await press(page, 'Enter');
  await page.waitForURL('**/types/*');
  await expect(page.getByRole('heading', { name: `Curlew Stage ${model}`, level: 1 })).toBeVisible();
  await expect(page.getByText('20 slots').first()).toBeVisible();
  const seconds = (Date.now() - began) / 1000;
  console.log(`a pasted chart of 20 slots was a published type after ${seconds.toFixed(1)} s by keyboard`);
  expect(seconds).toBeLessThan(120);
  for (const attribute of ['Pan', 'Dimmer', 'ColorAdd_R', 'Prism1PosRotate', 'Control1']) {
    await expect(page.getByRole('rowheader').or(page.getByRole('cell')).getByText(attribute).first()).toBeVisible();
  }
  expect(complaints).toEqual([]);
});

test('two people write one draft at once: cells merge, each sees where the other is, undo is mine, publishing is told', async ({
  browser,
  baseURL,
}) => {
  const base = String(baseURL);
  const designer = await sit(browser, 'designer', base);
  const technician = await sit(browser, 'technician', base);
  const path = await beginType(designer.page);
  const model = fresh('Plover');
  await designer.page.keyboard.type('Curlew Stage');
  await press(designer.page, 'Tab');
  await designer.page.keyboard.type(model);
  await designer.page.getByLabel('The chart, as copied from the manual').focus();
  await paste(designer.page, '1 Dimmer\n2 Red\n3 Green\n4 Blue\n');
  await designer.page.getByRole('button', { name: 'Take 4 rows' }).press('Enter');
  await technician.page.goto(base + path);
  await expect(cell(technician.page, 4, 'name')).toHaveText('Blue');

  // One cell each of the same row.
  await cell(designer.page, 1, 'default').click();
  await designer.page.keyboard.type('7');
  await cell(technician.page, 1, 'highlight').click();
  await expect(cell(designer.page, 1, 'highlight').getByText('Bram Kettle', { exact: true })).toBeVisible();
  await technician.page.keyboard.type('255');
  await press(technician.page, 'Enter');
  await press(designer.page, 'Enter');
  for (const { page } of [designer, technician]) {
    await expect(cell(page, 1, 'default')).toHaveText('7');
    await expect(cell(page, 1, 'highlight')).toContainText('255');
  }
  // A guess confirmed by one is confirmed for both.
  await cell(technician.page, 2, 'attribute').click();
  await press(technician.page, 'F9');
  await expect(designer.page.getByText('3 guesses to confirm')).toBeVisible();
  await grid(designer.page).focus();
  await press(designer.page, 'Control+z');
  await expect(cell(technician.page, 1, 'default')).toHaveText('');
  await expect(cell(technician.page, 1, 'highlight')).toContainText('255');
  await expect(designer.page.getByText('3 guesses to confirm')).toBeVisible();

  await designer.page.getByRole('button', { name: 'Publish', exact: true }).click();
  await expect(designer.page.getByText('3 attributes were guessed and nobody has confirmed them yet.')).toBeVisible();
  await designer.page.getByRole('dialog').getByRole('button', { name: 'Publish' }).click();
  await designer.page.waitForURL('**/types/*');
  await expect(technician.page.getByText('This draft was published. Nothing changes here any more.')).toBeVisible();
  await expect(technician.page.getByText('read only')).toBeVisible();
  await technician.page.getByRole('link', { name: 'Look at the type' }).click();
  await expect(technician.page.getByRole('heading', { name: `Curlew Stage ${model}`, level: 1 })).toBeVisible();
  expect([...designer.complaints, ...technician.complaints]).toEqual([]);
});

test('cells repeat, a mode is copied and changed, what is wrong stands beside its row, undo goes all the way back', async ({
  page,
}) => {
  await enterDemo(page, 'designer');
  await beginType(page);
  await page.getByLabel('The chart, as copied from the manual').focus();
  await paste(page, '1 Dimmer\n2 Red\n3 Green\n4 Blue\n');
  await page.getByRole('button', { name: 'Take 4 rows' }).press('Enter');
  await expect(grid(page)).toBeFocused();
  const slots = page.getByRole('list', { name: 'Slots of break 1' }).getByRole('listitem');

  // The three colours, twelve times.
  await press(page, 'Control+Home', 'ArrowDown', 'End', 'Shift+ArrowDown', 'Shift+ArrowDown', 'Enter');
  await expect(page.getByRole('dialog', { name: 'Repeat 3 rows' })).toBeVisible();
  await page.keyboard.type('12');
  await press(page, 'Tab');
  await page.keyboard.type('Pixel');
  await press(page, 'Enter');
  await expect(slots).toHaveCount(37);
  await expect(slots.last()).toContainText('ColorAdd_B cell 12');
  await expect(cell(page, 2, 'repeat')).toHaveText('× 12 Pixel');

  await page.getByRole('button', { name: 'Copy this mode' }).press('Enter');
  await expect(page.getByLabel('Name of the mode')).toHaveValue('4 slots copy');
  await grid(page).focus();
  await press(page, 'Control+Home');
  await page.keyboard.type('3');
  await press(page, 'Enter');
  await expect(slots.nth(2)).toContainText('taken twice');
  await expect(slots.first()).toContainText('not used');
  await expect(cell(page, 3, 'slots')).toContainText('blocker');
  await press(page, 'F8', 'F1');
  await expect(page.getByRole('dialog', { name: 'Keys' })).toBeVisible();
  await press(page, 'Escape');
  await expect(grid(page)).toBeFocused();
  await press(page, 'F6');
  await expect(slots.nth(2).getByRole('button')).toBeFocused();
  await press(page, 'Escape');
  await page.getByRole('button', { name: '4 slots', exact: true }).click();
  await expect(cell(page, 1, 'slots')).toHaveText('1');

  // Everything back, step by step: the slot, the copy, the repeat, the paste.
  await grid(page).focus();
  for (let step = 0; step < 5; step++) await press(page, 'Control+z');
  await expect(page.getByText('No mode yet. Paste its chart')).toBeVisible();
  await page.getByRole('heading', { level: 1 }).click();
  for (let step = 0; step < 5; step++) await press(page, 'Control+Shift+Z');
  await expect(page.getByRole('button', { name: '4 slots copy' })).toBeVisible();
  await accessible(page);
  await page.evaluate(() => {
    document.documentElement.dataset.theme = 'dark';
  });
  await accessible(page);
});

test('a reader of the crew looks on and is told so once', async ({ browser, baseURL }) => {
  const base = String(baseURL);
  const technician = await sit(browser, 'technician', base);
  const designer = await sit(browser, 'designer', base);
  const path = await beginType(technician.page, 'demo-house');
  await technician.page.getByLabel('The chart, as copied from the manual').focus();
  await paste(technician.page, '1 Dimmer\n2 Red\n');
  await technician.page.getByRole('button', { name: 'Take 2 rows' }).press('Enter');
  await designer.page.goto(base + path);
  await expect(cell(designer.page, 2, 'name')).toHaveText('Red');
  await expect(designer.page.getByText('You are a reader here')).toHaveCount(1);
  await expect(designer.page.getByText('read only')).toBeVisible();
  for (const name of ['Publish', 'Drop this draft', 'Add a row', 'Paste a chart', 'Add a mode']) {
    await expect(designer.page.getByRole('button', { name, exact: true })).toHaveCount(0);
  }
  await cell(designer.page, 1, 'name').click();
  await designer.page.keyboard.type('x');
  await expect(designer.page.getByText('This draft takes no edits from you.')).toBeVisible();
  await expect(cell(designer.page, 1, 'name')).toHaveText('Dimmer');
  await accessible(designer.page);
  expect([...designer.complaints, ...technician.complaints]).toEqual([]);
});

test('a built-in type becomes one’s own with its modes kept until they are opened', async ({ page }) => {
  await enterDemo(page, 'technician');
  await page.goto('/crews/demo-touring/types');
  await page.getByLabel('Find a type').fill('RGBW');
  await press(page, 'Enter');
  await page.getByRole('button', { name: 'Write a type of your own from it' }).click();
  await page.waitForURL('**/drafts/*');
  await expect(page.getByText('Kept slot by slot as it was when this draft began.')).toBeVisible();
  await page.getByRole('button', { name: 'Open its chart' }).click();
  await page.getByRole('dialog').getByRole('button', { name: 'Open its chart' }).click();
  await expect(cell(page, 1, 'attribute')).toHaveText('ColorAdd_R');
  await page.getByRole('button', { name: 'Drop this draft' }).click();
  await page.getByRole('dialog').getByRole('button', { name: 'Drop this draft' }).click();
  await page.waitForURL('**/types');
});
