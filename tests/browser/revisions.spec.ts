import { readFileSync } from 'node:fs';
import { type Browser, devices, expect, type Page, test } from '@playwright/test';
import { parse } from 'csv-parse/sync';
import { axeFaults } from './support/axe-faults.ts';
import { enterDemo, fresh, makeRig } from './support/doors.ts';
import { watchConsole } from './support/watch-console.ts';

/** What a thumb hits, in CSS pixels. Source: WCAG 2.1, success criterion 2.5.5. */
const TARGET = 44;

/** Four units of ten slots; the second and third claim slots 26 to 30 of universe 1 both. */
const LIST = [
  'Channel\tPosition\tUnit\tType\tMode\tFootprint\tAddress\tCircuit',
  '1\tBar 1\t1\tTern profile\tTen\t10\t1:1\tA-1',
  '2\tBar 1\t2\tTern profile\tTen\t10\t1:21\tA-1',
  '3\tBar 1\t10\tTern profile\tTen\t10\t1:26\tA-2',
  '4\tBar 2\t1\tTern profile\tTen\t10\t1:41\tA-2',
].join('\n');
const CLASH = /Slots 1:26–30 are claimed by/;

const toPage = (page: Page, name: string) =>
  page.getByRole('navigation', { name: 'Pages of this rig' }).getByRole('link', { name, exact: true }).click();

const rowOf = (page: Page, channel: number) =>
  page
    .locator('[role="row"]')
    .filter({ has: page.locator('[data-column="channel"]', { hasText: new RegExp(`^${channel}(\\D|$)`) }) });

async function write(page: Page, channel: number, column: string, text: string): Promise<void> {
  await rowOf(page, channel).locator(`[data-column="${column}"]`).click();
  await page.keyboard.type(text);
  await page.keyboard.press('Enter');
}

const saved = (page: Page) => expect(page.getByText('saved', { exact: true })).toBeVisible();

/** A rig of the list, open at its revisions on two screens. */
async function twoScreens(browser: Browser) {
  const [designer, technician] = await Promise.all(
    [0, 1].map(async () => (await browser.newContext({ viewport: { width: 1440, height: 900 } })).newPage()),
  );
  if (designer === undefined || technician === undefined) throw new Error('two pages are wanted');
  const complaints = [designer, technician].map((page) => watchConsole(page));
  const name = fresh('Frozen');
  await enterDemo(designer, 'designer');
  const path = await makeRig(designer, name);
  await toPage(designer, 'Lists in');
  await designer.getByLabel('Or paste the list').fill(LIST);
  await designer.getByRole('button', { name: 'Read what I pasted' }).click();
  await designer.getByRole('button', { name: 'Bring in 4 fixtures' }).click();
  await designer.waitForURL(`**${path}`);
  await saved(designer);
  await toPage(designer, 'Revisions');
  await enterDemo(technician, 'technician');
  await technician.goto(`${path}/revisions`);
  await expect(technician.getByText('Nothing is frozen yet.', { exact: false })).toBeVisible();
  return { designer, technician, name, path, complaints };
}

/** Freezes with the blocker accepted by a named person; what is missing is said until it is there. */
async function freeze(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Freeze a revision…' }).click();
  const dialog = page.getByRole('dialog');
  const done = dialog.getByRole('button', { name: 'Freeze it' });
  const box = dialog.getByRole('checkbox', { name: CLASH });
  await expect(box).not.toBeChecked();
  await expect(done).toBeDisabled();
  await expect(dialog.getByText('One blocker is not accepted yet.')).toBeVisible();
  expect(await axeFaults(page)).toEqual([]);
  await dialog.getByLabel('Note').fill('As hung');
  await box.check();
  await expect(dialog.getByText('Nobody is named yet who accepts the blockers.')).toBeVisible();
  await expect(done).toBeDisabled();
  await dialog.getByLabel('Accepted by').fill('Ona Reeve');
  await done.click();
  await expect(dialog).toHaveCount(0);
}

const changesOf = (page: Page) =>
  page
    .getByRole('table', { name: 'What differs' })
    .locator('tbody tr')
    .evaluateAll((rows) =>
      rows.map((row) => [...row.children].map((cell) => cell.textContent.replace(/\s+/g, ' ').trim())),
    );

test('a rig is frozen with a blocker that a named person accepts, changed by a second person, and compared live', async ({
  browser,
}) => {
  const { designer, technician, name, path, complaints } = await twoScreens(browser);
  await freeze(designer);
  await expect(designer.getByText('The rig is frozen as revision 1.')).toBeVisible();
  // The other one sees it without loading the page again.
  for (const page of [designer, technician]) {
    await expect(page.getByRole('heading', { name: 'Revision 1: As hung' })).toBeVisible();
    await expect(page.getByText('1 blocker accepted by Ona Reeve.')).toBeVisible();
    await expect(page.getByText(/4 units · 1 blocker/)).toBeVisible();
  }
  expect(await axeFaults(designer)).toEqual([]);
  // Nothing has changed: nothing is frozen twice.
  await designer.getByRole('button', { name: 'Freeze a revision…' }).click();
  await designer.getByRole('checkbox', { name: CLASH }).check();
  await designer.getByLabel('Accepted by').fill('Ona Reeve');
  await designer.getByRole('button', { name: 'Freeze it' }).click();
  await expect(designer.getByRole('dialog').getByRole('alert')).toContainText(
    'The newest revision says the same already.',
  );
  await designer.getByRole('button', { name: 'Cancel' }).click();

  await designer.getByRole('link', { name: 'Compare revision 1 with now' }).click();
  expect(new URL(designer.url()).hash).toBe('#1..now');
  await expect(designer.getByText('Nothing differs between revision 1 and now.')).toBeVisible();
  await toPage(technician, 'Sheet');
  await write(technician, 3, 'address', '2:101');
  await write(technician, 2, 'circuit', 'A-9');
  await write(technician, 4, 'position', 'Bar 1');
  await expect(designer.getByText('From revision 1 to now: 3 things to do at 3 units.', { exact: true })).toBeVisible();
  expect(await changesOf(designer)).toEqual([
    ['Bar 1 · 1', 'Move', 'was Bar 2 · 1 → is to be Bar 1 · 1'],
    ['Bar 1 · 2', 'Plug', 'was circuit A-1 → is to be circuit A-9'],
    ['Bar 1 · 10', 'Set the address', 'was 1:26 → is to be 2:101'],
  ]);
  expect(await axeFaults(designer)).toEqual([]);
  await designer.getByRole('button', { name: 'Plug 1' }).click();
  expect(await changesOf(designer)).toEqual([['Bar 1 · 2', 'Plug', 'was circuit A-1 → is to be circuit A-9']]);

  // As one goes along the position, with what to mind.
  await designer.getByRole('button', { name: 'Change sheet' }).click();
  const bar = designer.getByRole('region', { name: 'Bar 1' });
  await expect(bar).toContainText('3 things at 3 units');
  await expect(bar.getByRole('listitem').filter({ hasText: 'Set the address: 1:26 → 2:101.' }).first()).toBeVisible();
  await expect(designer.getByText(/a competent rigger has the last word/)).toBeVisible();
  await expect(designer.getByText(/a licensed electrician has the last word/)).toBeVisible();
  expect(await axeFaults(designer)).toEqual([]);

  const [download] = await Promise.all([
    designer.waitForEvent('download'),
    designer.getByRole('button', { name: 'Take out as CSV' }).click(),
  ]);
  expect(download.suggestedFilename()).toMatch(/^frozen-.*-changes-\d{4}-\d\d-\d\d\.csv$/);
  const records: string[][] = parse(readFileSync(await download.path()), { relax_column_count: true });
  expect(records.slice(0, 3).map(([first]) => first)).toEqual([
    'Change sheet',
    `Rig: ${name}`,
    'From revision 1 to now',
  ]);
  const head = records.findIndex(([first]) => first === 'Position');
  const end = records.findIndex(([first]) => first === 'End of list');
  expect(records.slice(head, end).filter((cells) => cells.some((cell) => cell !== ''))).toEqual([
    ['Position', 'Unit', 'Channel', 'What to do', 'Was', 'Is to be'],
    ['Bar 1', '1', '4', 'Move', 'Bar 2 · 1', 'Bar 1 · 1'],
    ['Bar 1', '2', '2', 'Plug', 'circuit A-1', 'circuit A-9'],
    ['Bar 1', '10', '3', 'Set the address', '1:26', '2:101'],
  ]);
  expect(records.slice(end).filter(([first]) => first === 'Caution').length).toBeGreaterThan(2);

  // On paper: which rig, from what to what, and the lines; no button, no menu.
  await designer.emulateMedia({ media: 'print' });
  await expect(designer.getByText(`Rig: ${name}`, { exact: true })).toBeVisible();
  await expect(bar).toBeVisible();
  await expect(designer.getByRole('navigation', { name: 'Pages of this rig' })).toBeHidden();
  await expect(designer.getByRole('button', { name: 'Take out as CSV' })).toBeHidden();
  await designer.emulateMedia({ media: null });

  // The pair can be sent: the address alone opens it.
  await technician.goto(`${path}/revisions#1..now`);
  await expect(technician.getByText('3 things to do at 3 units', { exact: false })).toBeVisible();
  await technician.getByRole('button', { name: 'The other way round' }).click();
  expect(new URL(technician.url()).hash).toBe('#now..1');
  await expect(technician.getByText('From now to revision 1: 3 things to do at 3 units.')).toBeVisible();
  // The browser itself notes the freeze that was refused.
  expect(complaints).toEqual([[expect.stringMatching(/status of 409/)], []]);
});

test('one revision is read as it was, and a show rig starts from it and remembers', async ({ browser }) => {
  const { designer, technician, name, complaints } = await twoScreens(browser);
  await freeze(designer);
  await toPage(technician, 'Sheet');
  await write(technician, 3, 'address', '2:101');
  await designer.getByRole('link', { name: 'Look at revision 1' }).click();
  const units = designer.getByRole('table', { name: 'Units of revision 1' });
  await expect(units.getByRole('row', { name: /Bar 1 · 10/ })).toContainText('1:26');
  await expect(designer.getByRole('region', { name: 'What the check found on that day' })).toContainText(
    /are claimed by Bar 1 · 2 and Bar 1 · 10 \(accepted by Ona Reeve\)/,
  );
  expect(await axeFaults(designer)).toEqual([]);
  await designer.getByRole('link', { name: 'All revisions' }).click();

  await designer.getByRole('button', { name: 'Start a show rig from revision 1…' }).click();
  const show = fresh('On tour');
  await designer.getByLabel('Name of the show rig').fill(show);
  expect(await axeFaults(designer)).toEqual([]);
  await designer.getByRole('dialog').getByRole('button', { name: 'Start it' }).click();
  await designer.getByRole('heading', { name: show, level: 1 }).waitFor();
  await expect(designer.getByText(`from “${name}”, revision 1`, { exact: false })).toBeVisible();
  // It has what was frozen, and not what was changed since.
  await expect(rowOf(designer, 3).locator('[data-column="address"]')).toContainText('1:26');
  await write(designer, 3, 'address', '3:1');
  await write(designer, 3, 'circuit', 'B-1');
  await rowOf(designer, 3).locator('[data-column="channel"]').click();
  await designer.getByRole('toolbar').getByRole('button', { name: 'Slots', exact: true }).click();
  const origin = designer.getByRole('region', { name: 'Where it came from' });
  await expect(origin).toHaveText('Came from the show rig (revision 1), changed since: address and circuit.');
  await rowOf(designer, 1).locator('[data-column="channel"]').click();
  await expect(origin).toHaveText('As the show rig (revision 1) has it.');
  await toPage(designer, 'Revisions');
  await expect(designer.getByText(new RegExp(`^Started from show rig “${name}”, revision 1, by crew`))).toBeVisible();
  await designer.getByRole('link', { name: 'Compare revision 1 with now' }).click();
  await expect(designer.getByText('2 things to do at 1 unit', { exact: false })).toBeVisible();
  expect(complaints.flat()).toEqual([]);
});

test('revisions are frozen and compared on a phone, in the dark, without scrolling sideways', async ({ browser }) => {
  const { designer, path } = await twoScreens(browser);
  await freeze(designer);
  const context = await browser.newContext({
    ...devices['Pixel 7'],
    viewport: { width: 390, height: 844 },
    colorScheme: 'dark',
  });
  const page = await context.newPage();
  await enterDemo(page, 'technician');
  await toPage(designer, 'Sheet');
  await write(designer, 3, 'address', '2:101');
  await write(designer, 2, 'circuit', 'A-9');
  await page.goto(`${path}/revisions`);
  await page.getByRole('heading', { name: 'Revision 1: As hung' }).waitFor();
  const fits = async () => {
    const [wide, room] = await page.evaluate(() => [document.documentElement.scrollWidth, window.innerWidth]);
    expect(wide).toBeLessThanOrEqual(room ?? 0);
    expect(await axeFaults(page)).toEqual([]);
  };
  await fits();
  const link = page.getByRole('link', { name: 'Compare revision 1 with now' });
  for (const target of [link, page.getByRole('button', { name: 'Freeze a revision…' })])
    expect((await target.boundingBox())?.height).toBeGreaterThanOrEqual(TARGET);
  await link.tap();
  await expect(page.getByText('2 things to do at 2 units', { exact: false })).toBeVisible();
  await fits();
  await page.getByRole('button', { name: 'Change sheet' }).tap();
  await expect(page.getByRole('region', { name: 'Bar 1' })).toContainText('Set the address: 1:26 → 2:101.');
  await fits();
});

test('a show rig begins as the newest revision of a house rig, from the list of rigs', async ({ page }) => {
  await enterDemo(page, 'technician');
  const house = fresh('House');
  await page.getByRole('button', { name: 'Make a rig' }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel('Kind').selectOption('house');
  const venue = dialog.getByLabel('Venue');
  for (const crew of await dialog.getByLabel('Crew').locator('option').allInnerTexts()) {
    await dialog.getByLabel('Crew').selectOption(crew);
    if ((await venue.locator('option').count()) > 1) break;
  }
  await venue.selectOption({ index: 1 });
  await dialog.getByLabel('Name of the rig').fill(house);
  await dialog.getByLabel('Name of the rig').press('Enter');
  await page.getByRole('heading', { name: house, level: 1 }).waitFor();
  await toPage(page, 'Lists in');
  await page.getByLabel('Or paste the list').fill(LIST);
  await page.getByRole('button', { name: 'Read what I pasted' }).click();
  await page.getByRole('button', { name: 'Bring in 4 fixtures' }).click();
  await saved(page);

  const begin = async (name: string) => {
    await page.goto('/');
    await page.getByRole('button', { name: 'Make a rig' }).click();
    await dialog.getByLabel('Name of the rig').fill(name);
    const choice = dialog.getByLabel('Begins').locator('option', { hasText: house });
    await dialog.getByLabel('Begins').selectOption(String(await choice.textContent()));
    await dialog.getByRole('button', { name: 'Make it' }).click();
  };
  const show = fresh('Guests');
  await begin(show);
  await expect(dialog.getByRole('alert')).toContainText('Nothing of this house rig is frozen yet.');
  await dialog.getByRole('button', { name: 'Cancel' }).click();
  await page.getByRole('link', { name: house }).click();
  await toPage(page, 'Revisions');
  await freeze(page);
  await page.getByRole('heading', { name: 'Revision 1: As hung' }).waitFor();
  await begin(show);
  await page.getByRole('heading', { name: show, level: 1 }).waitFor();
  await expect(page.getByText(`from “${house}”, revision 1`, { exact: false })).toBeVisible();
  await expect(rowOf(page, 4).locator('[data-column="address"]')).toContainText('1:41');
});
