import { type Browser, devices, expect, type Page, test } from '@playwright/test';
import { axeFaults } from './support/axe-faults.ts';
import { enterDemo, fresh, makeRig } from './support/doors.ts';
import { watchConsole } from './support/watch-console.ts';

/** What a thumb hits, in CSS pixels. Source: WCAG 2.1, success criterion 2.5.5. */
const TARGET = 44;

/** Three units of ten slots; the second and third claim slots 26 to 30 of universe 1 both. */
const LIST = [
  'Channel\tPosition\tUnit\tType\tMode\tFootprint\tAddress\tCircuit',
  '1\tBar 1\t1\tTern profile\tTen\t10\t1:1\tA-1',
  '2\tBar 1\t2\tTern profile\tTen\t10\t1:21\tA-1',
  '3\tBar 1\t10\tTern profile\tTen\t10\t1:26\tA-2',
].join('\n');
const CLASH = /Slots 1:26–30 are claimed by/;
const WORDS = 'The dimmer on Bar 1 sticks at 12.';

const toPage = (page: Page, name: string) =>
  page.getByRole('navigation', { name: 'Pages of this rig' }).getByRole('link', { name, exact: true }).click();

/** A rig of the list at the desk of the giving crew, open at its revisions. */
async function givenRig(browser: Browser) {
  const page = await (await browser.newContext({ viewport: { width: 1280, height: 800 } })).newPage();
  const complaints = watchConsole(page);
  const name = fresh('Given');
  await enterDemo(page, 'designer');
  const path = await makeRig(page, name);
  await toPage(page, 'Lists in');
  await page.getByLabel('Or paste the list').fill(LIST);
  await page.getByRole('button', { name: 'Read what I pasted' }).click();
  await page.getByRole('button', { name: 'Bring in 3 fixtures' }).click();
  await page.waitForURL(`**${path}`);
  await expect(page.getByText('saved', { exact: true })).toBeVisible();
  await toPage(page, 'Revisions');
  return { page, name, path, complaints };
}

async function freeze(page: Page, number: number): Promise<void> {
  await page.getByRole('button', { name: 'Freeze a revision…' }).click();
  const box = page.getByRole('checkbox', { name: CLASH });
  if ((await box.count()) > 0) {
    await box.check();
    await page.getByLabel('Accepted by').fill('Ona Reeve');
  }
  await page.getByRole('button', { name: 'Freeze it' }).click();
  await expect(page.getByText(`The rig is frozen as revision ${number}.`)).toBeVisible();
}

/** Offers a revision with words, and answers the link. */
async function offer(page: Page, number: number): Promise<string> {
  await page.getByRole('button', { name: `Hand over revision ${number}…` }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel('What they should know').fill(WORDS);
  expect(await axeFaults(page)).toEqual([]);
  await dialog.getByRole('button', { name: 'Make a link' }).click();
  const link = await dialog.getByLabel('Link of the handover').inputValue();
  await dialog.getByRole('button', { name: 'Close' }).click();
  expect(link).toMatch(/^http:\/\/localhost:\d+\/handover\/[a-z0-9]{20,}$/);
  return link;
}

/** Comes by a link without an account, makes one and a crew, and follows the link again. */
async function newTaker(page: Page, link: string): Promise<string> {
  await page.goto(link);
  await page.getByRole('link', { name: 'Make an account' }).click();
  await page.getByLabel('Your name').fill('Nia Holt');
  await page.getByLabel('E-mail').fill(`${fresh('nia').replace(' ', '')}@demo.invalid`);
  await page.getByLabel('Password').fill('four plain words');
  await page.keyboard.press('Enter');
  await expect(page.getByText(WORDS)).toBeVisible();
  await expect(page.getByText('You are in no crew that could take it', { exact: false })).toBeVisible();
  const crew = fresh('Night Shift');
  await page.goto('/');
  await page.getByRole('button', { name: 'Start a crew' }).click();
  await page.getByLabel('Name of the crew').fill(crew);
  await page.getByLabel('Name of the crew').press('Enter');
  await expect(page.getByRole('heading', { name: crew })).toBeVisible();
  await page.goto(link);
  return crew;
}

const part = (page: Page, name: string) => page.getByRole('region', { name });

test('a revision goes to another crew by a link and by a file, with what changed since they last had it', async ({
  browser,
}) => {
  test.setTimeout(240_000);
  const { page: giver, name, complaints } = await givenRig(browser);
  const taker = await (await browser.newContext({ viewport: { width: 1280, height: 800 } })).newPage();
  const takerComplaints = watchConsole(taker);
  await freeze(giver, 1);
  const link = await offer(giver, 1);
  await expect(giver.getByText(/Offered by Odile Fenn on .*; open until/)).toBeVisible();

  const crew = await newTaker(taker, link);
  await expect(
    taker.getByRole('heading', { name: `Saltwind Touring hands over “${name}”, revision 1.` }),
  ).toBeVisible();
  await expect(taker.getByText('Show rig · 3 units · 1 blocker')).toBeVisible();
  await expect(part(taker, 'What the check found').getByText(CLASH)).toBeVisible();
  await expect(part(taker, 'Open faults')).toContainText('None is known.');
  await expect(part(taker, 'What can hurt, and who signs for it')).toContainText('That is no promise');
  await expect(part(taker, 'What changed since you last had it')).toContainText('nothing of this rig before');
  await expect(taker.getByRole('table', { name: 'Units of revision 1' }).locator('tbody tr')).toHaveCount(3);
  expect(await axeFaults(taker)).toEqual([]);
  await taker.getByLabel('Name of your rig').fill(`${name} with us`);
  await taker.getByLabel('Your words to the giver').fill('With thanks.');
  await taker.getByRole('button', { name: `Accept into ${crew}` }).click();
  await expect(taker.getByRole('heading', { level: 1, name: `${name} with us` })).toBeVisible();
  await expect(taker.locator('[role="row"] [data-column="unit"]', { hasText: /^10/ })).toBeVisible();
  await toPage(taker, 'Revisions');
  await expect(
    taker.getByText(`Taken over as show rig “${name}”, revision 1, by crew Saltwind Touring, on`, { exact: false }),
  ).toBeVisible();

  // The giver reads the answer, changes a unit and freezes again; the file of that goes the other way round.
  await giver.reload();
  await expect(giver.getByText(`accepted by Nia Holt for ${crew}`, { exact: false })).toBeVisible();
  await expect(giver.getByText('Nia Holt: “With thanks.”')).toBeVisible();
  await toPage(giver, 'Sheet');
  await giver
    .locator('[role="row"]')
    .filter({ has: giver.locator('[data-column="channel"]', { hasText: /^3(\D|$)/ }) })
    .locator('[data-column="address"]')
    .click();
  await giver.keyboard.type('1:41');
  await giver.keyboard.press('Enter');
  await toPage(giver, 'Revisions');
  await freeze(giver, 2);
  await giver.getByRole('button', { name: 'Hand over revision 2…' }).click();
  await giver.getByLabel('What they should know').fill(WORDS);
  const saving = giver.waitForEvent('download');
  await giver.getByRole('button', { name: 'Save as a file' }).click();
  const file = await saving;
  expect(file.suggestedFilename()).toBe(`${name}-r2.handover.zip`);
  await expect(giver.getByText(`The file is saved as “${name}-r2.handover.zip”.`)).toBeVisible();
  await giver.getByRole('button', { name: 'Close' }).click();

  await taker.goto('/');
  await taker.getByRole('link', { name: 'members and venues' }).click();
  await expect(part(taker, 'Handovers').getByText(`From Saltwind Touring: “${name}”, revision 1`)).toBeVisible();
  await taker.getByRole('link', { name: 'Bring in a handover file' }).click();
  await taker.getByLabel('Choose a handover file').setInputFiles(await file.path());
  const since = part(taker, 'What changed since you last had it');
  await expect(since).toContainText(`Against what came to you as “${name} with us”`);
  await expect(since.getByRole('table', { name: 'What differs' }).locator('tbody tr')).toHaveCount(1);
  await expect(since.getByRole('table', { name: 'What differs' })).toContainText('1:26');
  expect(await axeFaults(taker)).toEqual([]);
  await taker.getByLabel('Name of your rig').fill(`${name} again`);
  await taker.getByRole('button', { name: 'Make a rig of it' }).click();
  await expect(taker.getByRole('heading', { level: 1, name: `${name} again` })).toBeVisible();
  await toPage(taker, 'Revisions');
  await expect(taker.getByText('Brought in from a file of', { exact: false })).toBeVisible();

  // The same file once more is known; a torn one is refused in a sentence.
  await taker.goto('/');
  await taker.getByRole('link', { name: 'members and venues' }).click();
  await taker.getByRole('link', { name: 'Bring in a handover file' }).click();
  const choose = taker.getByLabel('Choose a handover file');
  await choose.setInputFiles(await file.path());
  await expect(taker.getByRole('link', { name: `Open “${name} again”` })).toBeVisible();
  await choose.setInputFiles({ name: 'torn.handover.zip', mimeType: 'application/zip', buffer: Buffer.from('torn') });
  await expect(taker.getByRole('main').getByRole('alert')).toContainText('This is no handover file');
  // A browser notes every answer of 4xx by itself.
  const own = (all: readonly string[]) => all.filter((each) => !each.includes('status of 4'));
  expect(own([...complaints, ...takerComplaints])).toEqual([]);
});

test('an offer is taken back, another is declined on a phone in the dark, and both crews see it', async ({
  browser,
}) => {
  test.setTimeout(180_000);
  const { page: giver, name } = await givenRig(browser);
  const { viewport: _own, ...pixel } = devices['Pixel 7'];
  const phone = await (
    await browser.newContext({ ...pixel, viewport: { width: 390, height: 844 }, colorScheme: 'dark' })
  ).newPage();
  await freeze(giver, 1);
  const first = await offer(giver, 1);
  const crew = await newTaker(phone, first);
  await expect(phone.getByRole('button', { name: `Accept into ${crew}` })).toBeVisible();
  expect(await axeFaults(phone)).toEqual([]);
  expect(await phone.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
  for (const button of await phone.getByRole('main').getByRole('button').all())
    expect((await button.boundingBox())?.height ?? 0).toBeGreaterThanOrEqual(TARGET);

  await giver.getByRole('button', { name: 'Take it back' }).click();
  await giver.getByRole('dialog').getByRole('button', { name: 'Take it back' }).click();
  await expect(giver.getByText(/taken back by Odile Fenn on/)).toBeVisible();
  await phone.getByRole('button', { name: `Accept into ${crew}` }).click();
  await expect(phone.getByRole('main').getByRole('alert')).toContainText('There is no such offer.');
  await phone.reload();
  await expect(phone.getByRole('main').getByRole('alert')).toContainText('There is no such offer.');
  await expect(phone.getByText(name)).toHaveCount(0);

  await phone.goto(await offer(giver, 1));
  await phone.getByLabel('Your words to the giver').fill('We bring our own.');
  await phone.getByRole('button', { name: 'Decline' }).click();
  expect(await axeFaults(phone)).toEqual([]);
  await phone.getByRole('dialog').getByRole('button', { name: 'Decline' }).click();
  await expect(phone.getByText('You declined this handover.', { exact: false })).toBeVisible();
  await giver.goto('/');
  await giver.getByRole('link', { name: 'Saltwind Touring: members and venues' }).click();
  await expect(part(giver, 'Handovers').getByText(`declined by Nia Holt for ${crew}`, { exact: false })).toBeVisible();
  await expect(part(giver, 'Handovers').getByText('Nia Holt: “We bring our own.”')).toBeVisible();
  expect(await axeFaults(giver)).toEqual([]);
});
