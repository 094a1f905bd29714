import { expect, type Page, test } from '@playwright/test';
import { axeFaults } from './support/axe-faults.ts';
import { enterDemo, fresh, makeRig } from './support/doors.ts';
import { watchConsole } from './support/watch-console.ts';

// An invented list as a spreadsheet of a German-speaking crew writes it: Windows-1252, semicolons, title lines, a heading per
// bar, a quantity, a cell that is no address, a total.
const LIST = [
  'Stück im Herbst;;;;;',
  ';;;;;',
  'Nr.;Kanal;Gerät;Kanäle;DMX;Bemerkung',
  'Zug 1;;;;;',
  '1;11;Moorhen Tern spot;16;3.001;Spitze',
  '2;12;Moorhen Tern spot;16;3.017;Spitze',
  '3;13;Moorhen Tern spot;16;fragen;',
  'Zug 2;;;;;',
  '1-4;21;Moorhen Wren wash;10;3.101;Wäsche',
  'Summe;7;;;;',
].join('\r\n');

const file = (name: string, buffer: Buffer) => ({ name, mimeType: 'text/csv', buffer });
const takeIn = (page: Page, name: string, buffer: Buffer) =>
  page.locator('input[type=file]').setInputFiles(file(name, buffer));

/** The row of the preview for a line of the list: the heading row of the table is its first. */
const lineOf = (page: Page, line: number) =>
  page.getByRole('table', { name: /what it becomes/ }).locator(`tr[aria-rowindex="${line + 1}"]`);

async function openListsIn(page: Page): Promise<string> {
  await enterDemo(page, 'designer');
  const path = await makeRig(page, fresh('Import'));
  await page.getByRole('navigation', { name: 'Pages of this rig' }).getByRole('link', { name: 'Lists in' }).click();
  await page.getByRole('heading', { level: 1 }).waitFor();
  return path;
}

test('a list is looked through line by line, comes in as one edit, and is taken back as one', async ({ page }) => {
  const complaints = watchConsole(page);
  const path = await openListsIn(page);
  await takeIn(page, 'herbst.csv', Buffer.from(LIST, 'latin1'));
  await expect(page.getByText('herbst.csv · Windows-1252 · separated by semicolons · 10 lines')).toBeVisible();
  await expect(page.getByLabel('Column C is taken as')).toHaveValue('type');
  await expect(lineOf(page, 1)).toContainText('Title');
  await expect(lineOf(page, 8)).toContainText('Position for the lines below: Zug 2');
  await expect(lineOf(page, 7)).toContainText('cannot be read');
  await expect(lineOf(page, 10)).toContainText('not taken in');
  expect(await axeFaults(page)).toEqual([]);

  await page.getByLabel('Bring in line 6').uncheck();
  await page.getByRole('button', { name: 'Bring in 6 fixtures' }).click();
  await expect(page).toHaveURL(new RegExp(`${path}$`));
  await expect(page.getByText('Moorhen Wren wash').first()).toBeVisible();
  await page.keyboard.press('Control+z');
  await expect(page.getByText('This sheet is empty.')).toBeVisible();
  expect(complaints).toEqual([]);
});

test('what the crew said of columns is remembered for its next list, even under headings nobody can guess', async ({
  page,
}) => {
  await openListsIn(page);
  const heading = fresh('Zwirn');
  const list = (place: string) => Buffer.from(`${heading};Krimskrams\nTern spot;${place}\nTern wash;${place}\n`);
  await takeIn(page, 'one.csv', list('Bridge'));
  await page.getByLabel('Headings stand in').selectOption({ label: `line 1: ${heading} | Krimskrams` });
  await page.getByLabel('Column A is taken as').selectOption('type');
  await page.getByLabel('Column B is taken as').selectOption('position');
  await expect(page.getByText('you said so')).toHaveCount(2);
  const stored = page.waitForResponse((response) => response.url().includes('listMappings.remember'));
  await page.getByRole('button', { name: 'Bring in 2 fixtures' }).click();
  expect((await stored).status()).toBe(200);
  await page.getByRole('navigation', { name: 'Pages of this rig' }).getByRole('link', { name: 'Lists in' }).click();
  await takeIn(page, 'two.csv', list('Gallery'));
  await expect(page.getByText('your crew said so before')).toHaveCount(2);
  await expect(page.getByLabel('Column A is taken as')).toHaveValue('type');
  await expect(page.getByText('The rig has 2 fixtures already.')).toBeVisible();
});

test('files that are no list are refused with what they are and what to do', async ({ page }) => {
  await openListsIn(page);
  const refusals: readonly (readonly [string, Buffer, string])[] = [
    ['sheet.xlsx', Buffer.from('PK\x03\x04 and more', 'latin1'), 'workbook'],
    ['plot.pdf', Buffer.from('%PDF-1.7 and more'), 'printed document'],
    ['empty.csv', Buffer.from('  \n'), 'no text'],
    ['noise.csv', Buffer.from(Uint8Array.from({ length: 4000 }, (_, i) => (i * 7919) % 32)), 'not a text file'],
  ];
  for (const [name, bytes, sentence] of refusals) {
    await takeIn(page, name, bytes);
    await expect(page.getByRole('alert').filter({ hasText: sentence })).toBeVisible();
  }
});

test('five thousand lines are looked through without waiting', async ({ page }) => {
  await openListsIn(page);
  const rows = Array.from(
    { length: 5000 },
    (_, i) =>
      `${i + 1},Bar ${Math.floor(i / 40) + 1},${(i % 40) + 1},Tern spot,10,${Math.floor(i / 51) + 1}:${(i % 51) * 10 + 1}`,
  );
  const text = ['Channel,Position,Unit,Type,Footprint,Address', ...rows].join('\n');
  await takeIn(page, 'long.csv', Buffer.from(text));
  await expect(page.getByRole('button', { name: 'Bring in 5,000 fixtures' })).toBeEnabled();
  // Only lines near the window are drawn; the table says how many there are.
  expect(await page.getByLabel(/Bring in line/).count()).toBeLessThan(200);
  await expect(page.getByRole('table', { name: /what it becomes/ })).toHaveAttribute('aria-rowcount', '5002');
  await page.keyboard.press('End');
  await expect(page.getByLabel('Bring in line 5001')).toBeVisible();
});
