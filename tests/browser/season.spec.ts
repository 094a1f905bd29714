import { expect, type Page, test } from '@playwright/test';
import { fresh } from './support/doors.ts';
import { press } from './support/press.ts';
import { bringIn, DESK, PHONE, sit } from './support/sit.ts';

/** A house of four units at two positions. */
const LIST = [
  'Channel\tPosition\tUnit\tType\tMode\tFootprint\tAddress\tCircuit\tColour',
  '1\tFirst bar\t1\tTern profile\tTen\t10\t1:1\tA-1\tR26',
  '2\tFirst bar\t2\tTern profile\tTen\t10\t1:21\tA-2\tR26',
  '3\tSecond bar\t1\tTern profile\tTen\t10\t1:41\tB-1\tR26',
  '4\tSecond bar\t2\tTern profile\tTen\t10\t1:61\tB-2\tR26',
];

const toPage = (page: Page, name: string) =>
  page.getByRole('navigation', { name: 'Pages of this rig' }).getByRole('link', { name, exact: true }).click();
const saved = (page: Page) => expect(page.getByText('saved', { exact: true })).toBeVisible();
const cell = (page: Page, channel: number, column: string) =>
  page
    .locator('[role="row"]')
    .filter({ has: page.locator('[data-column="channel"]', { hasText: new RegExp(`^${channel}(\\D|$)`) }) })
    .locator(`[data-column="${column}"]`);
const tick = (page: Page, answer: 'Done' | 'Stays', line: string) =>
  page.getByRole('button', { name: `${answer}: ${line}`, exact: true });

async function write(page: Page, channel: number, column: string, text: string): Promise<void> {
  await cell(page, channel, column).click();
  await page.keyboard.type(text);
  await press(page, 'Enter');
  await expect(cell(page, channel, column)).toContainText(text);
  await saved(page);
}

async function freeze(page: Page, note: string, number: number): Promise<void> {
  await toPage(page, 'Revisions');
  await page.getByRole('button', { name: 'Freeze a revision…' }).click();
  await page.getByRole('dialog').getByLabel('Note').fill(note);
  await page.getByRole('button', { name: 'Freeze it' }).click();
  await expect(page.getByRole('heading', { name: `Revision ${number}: ${note}` })).toBeVisible();
}

/** The house's technician makes its standing rig, and freezes it as it hangs. */
async function makeHouse(page: Page, name: string): Promise<string> {
  await page.getByRole('button', { name: 'Make a rig' }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel('Kind').selectOption('house');
  await dialog.getByLabel('Crew').selectOption({ label: 'Millrace house crew' });
  await dialog.getByLabel('Venue').selectOption({ label: 'Millrace Playhouse' });
  await dialog.getByLabel('Name of the rig').fill(name);
  await dialog.getByLabel('Name of the rig').press('Enter');
  await page.getByRole('heading', { name, level: 1 }).waitFor();
  const path = new URL(page.url()).pathname;
  await bringIn(page, path, LIST);
  await saved(page);
  await freeze(page, 'As it hangs', 1);
  return path;
}

/** A show of the touring crew begins as that revision. */
async function startShow(page: Page, name: string): Promise<string> {
  await page.getByRole('button', { name: 'Start a show rig from revision 1…' }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel('Name of the show rig').fill(name);
  await dialog.getByLabel('Crew').selectOption({ label: 'Saltwind Touring' });
  await dialog.getByRole('button', { name: 'Start it' }).click();
  await page.getByRole('heading', { name, level: 1 }).waitFor();
  return new URL(page.url()).pathname;
}

/** Two people change the show at once, one freezes it, and both read what differs from how it began. */
async function changeShow(designer: Page, technician: Page): Promise<void> {
  await write(technician, 1, 'address', '2:101');
  await write(designer, 2, 'colour', 'L201');
  await write(technician, 3, 'circuit', 'B-9');
  await freeze(designer, 'After focus', 2);
  await designer.getByRole('link', { name: 'Compare revision 1 with now' }).click();
  await expect(designer.getByText('3 things to do at 3 units', { exact: false })).toBeVisible();
  await designer.getByRole('link', { name: 'All revisions' }).click();
}

async function offer(page: Page): Promise<string> {
  await page.getByRole('button', { name: 'Hand over revision 2…' }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel('What they should know').fill('The load-out is yours.');
  await dialog.getByRole('button', { name: 'Make a link' }).click();
  const link = await dialog.getByLabel('Link of the handover').inputValue();
  await dialog.getByRole('button', { name: 'Close' }).click();
  return link;
}

/** The house's crew takes the show over under a name of its own. */
async function accept(page: Page, link: string, name: string): Promise<string> {
  await page.goto(link);
  await expect(page.getByText('The load-out is yours.')).toBeVisible();
  await page.getByLabel('Name of your rig').fill(name);
  await page.getByRole('button', { name: 'Accept into Millrace house crew' }).click();
  await page.getByRole('heading', { name, level: 1 }).waitFor();
  return new URL(page.url()).pathname;
}

const linesOf = (page: Page) => page.locator('[data-step]');

/** The `count` things that were ever done to a unit of the open rig, oldest first. */
async function historyOf(page: Page, unit: string, count: number): Promise<string[]> {
  await toPage(page, 'History');
  await page.getByLabel('Unit', { exact: true }).fill(unit);
  await expect(page.getByText('Only this unit, whatever it was called')).toBeVisible();
  await expect(linesOf(page)).toHaveCount(count);
  return (await linesOf(page).allInnerTexts()).reverse();
}

test.use({ actionTimeout: 20_000 });

test('a whole season: house rig, show, two people, handover to a second crew, load-out, and the house says what stayed', async ({
  browser,
}) => {
  test.setTimeout(300_000);
  const [houseName, showName, takenName] = [fresh('Season house'), fresh('Season show'), fresh('Season taken')];
  const designer = await sit(browser, 'designer', DESK);
  const technician = await sit(browser, 'technician', DESK);
  const house = await makeHouse(technician.page, houseName);
  const show = await startShow(technician.page, showName);
  await designer.page.goto(show);
  await expect(designer.page.getByText(`from “${houseName}”, revision 1`, { exact: false })).toBeVisible();
  await changeShow(designer.page, technician.page);

  const taken = await accept(technician.page, await offer(designer.page), takenName);
  await designer.page.reload();
  await expect(
    designer.page.getByText('accepted by Bram Kettle for Millrace house crew', { exact: false }),
  ).toBeVisible();

  // From here on each edits their own.
  await write(technician.page, 4, 'address', '3:1');
  await toPage(designer.page, 'Sheet');
  await write(designer.page, 1, 'purpose', 'Kept by us');
  await expect(cell(designer.page, 4, 'address')).toContainText('1:61');
  await expect(cell(technician.page, 1, 'purpose')).not.toContainText('Kept by us');

  // Load-out, at a desk and with a thumb in the gangway.
  await toPage(technician.page, 'Put back');
  const record = (page: Page) => page.getByLabel('Put back to').locator('option:checked');
  await expect(record(technician.page)).toHaveText(`revision 1 of ${houseName}, its newest`);
  const gangway = await sit(browser, 'technician', PHONE);
  await gangway.page.goto(`${taken}/restore`);
  await expect(record(gangway.page)).toHaveText(`revision 1 of ${houseName}, its newest`);
  const progress = (page: Page) => page.getByRole('status').filter({ hasText: 'put back' });
  await expect(progress(gangway.page)).toHaveText('0 of 4 put back · 4 to do');
  await tick(gangway.page, 'Done', 'First bar · 1: Set the address: 2:101 → 1:1.').tap();
  await tick(technician.page, 'Done', 'Second bar · 1: Plug: circuit B-9 → B-1.').click();
  await tick(gangway.page, 'Done', 'Second bar · 2: Set the address: 3:1 → 1:61.').tap();
  await tick(technician.page, 'Stays', 'First bar · 2: Colour: L201 → R26.').click();
  for (const { page } of [technician, gangway])
    await expect(progress(page)).toHaveText('3 of 4 put back · 1 stays as it is · nothing is left to put back');

  // What stays is proposed to the house, whose crew takes it, and freezes the house anew.
  await technician.page.getByRole('button', { name: 'Propose to the house…' }).click();
  await technician.page.getByRole('dialog').getByRole('button', { name: 'Propose it' }).click();
  await technician.page.goto(`${house}/restore`);
  await technician.page.getByRole('button', { name: 'Look at it…' }).click();
  await technician.page.getByRole('dialog').getByRole('button', { name: 'Take 1 part' }).click();
  await expect(technician.page.getByRole('dialog')).toHaveCount(0);
  await saved(technician.page);
  await freeze(technician.page, 'After the season', 2);

  // One unit of the house, from start to end.
  const told = await historyOf(technician.page, 'First bar · 2', 2);
  expect(told[0]).toMatch(/added/);
  expect(told[1]).toMatch(/First bar · 2.*R26.*L201/s);
  for (const { complaints } of [designer, technician, gangway]) expect(complaints).toEqual([]);
});
