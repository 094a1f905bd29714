import { readFile } from 'node:fs/promises';
import { type Browser, type BrowserContextOptions, expect, type Page, test } from '@playwright/test';
import { axeFaults } from './support/axe-faults.ts';
import { enterDemo, fresh } from './support/doors.ts';
import { press } from './support/press.ts';
import { watchConsole } from './support/watch-console.ts';

/** What a thumb hits, in CSS pixels. Source: WCAG 2.1, success criterion 2.5.5. */
const TARGET = 44;
const PHONE: BrowserContextOptions = { viewport: { width: 390, height: 844 }, hasTouch: true, colorScheme: 'dark' };

/** A house of three units at two positions. */
const LIST = [
  'Channel\tPosition\tUnit\tType\tMode\tFootprint\tAddress\tCircuit\tColour',
  '1\tFirst bar\t1\tTern profile\tTen\t10\t1:1\tA-1\tR26',
  '2\tFirst bar\t2\tTern profile\tTen\t10\t1:21\tA-2\tR26',
  '3\tSecond bar\t1\tTern profile\tTen\t10\t1:41\tB-1\tR26',
].join('\n');

async function sit(browser: Browser, as: 'designer' | 'technician', base: string, options: BrowserContextOptions = {}) {
  const context = await browser.newContext(options);
  const page = await context.newPage();
  const complaints = watchConsole(page);
  await enterDemo(page, as, base);
  return { page, context, complaints };
}

/** Calls a procedure as the person at a page. */
async function call<T>(page: Page, procedure: string, data: object): Promise<T> {
  const { origin } = new URL(page.url());
  const answer = await page.request.post(`${origin}/api/trpc/${procedure}`, { data, headers: { origin } });
  expect(answer.status(), await answer.text()).toBe(200);
  return (await answer.json()).result.data;
}

async function bringIn(page: Page, path: string, base: string): Promise<void> {
  await page.goto(`${base}${path}/lists-in`);
  await page.getByLabel('Or paste the list').fill(LIST);
  await page.getByRole('button', { name: 'Read what I pasted' }).click();
  await page.getByRole('button', { name: 'Bring in 3 fixtures' }).click();
  await page.waitForURL(`**${path}`);
  await expect(page.getByText('saved', { exact: true })).toBeVisible();
}

/** A house rig with a revision, and a show that began as it. */
async function houseAndShow(page: Page, base: string): Promise<{ readonly house: string; readonly show: string }> {
  const [house, show] = [fresh('House'), fresh('Show')];
  const made = await call<{ id: string }>(page, 'rigs.create', { crewId: 'demo-house', name: house, kind: 'house' });
  await bringIn(page, `/rigs/${made.id}`, base);
  await call(page, 'revisions.freeze', { rigId: made.id, note: 'As hung', accepted: { by: '', keys: [] } });
  const from = { rigId: made.id, number: 1, crewId: 'demo-touring', name: show, kind: 'show' };
  const started = await call<{ id: string }>(page, 'revisions.start', from);
  return { house: `/rigs/${made.id}`, show: `/rigs/${started.id}` };
}

async function write(page: Page, channel: number, column: string, text: string): Promise<void> {
  const row = page
    .locator('[role="row"]')
    .filter({ has: page.locator('[data-column="channel"]', { hasText: new RegExp(`^${channel}(\\D|$)`) }) });
  await row.locator(`[data-column="${column}"]`).click();
  await page.keyboard.type(text);
  await press(page, 'Enter');
  await expect(row.locator(`[data-column="${column}"]`)).toHaveText(text);
}

const saved = (page: Page) => expect(page.getByText('saved', { exact: true })).toBeVisible();
const tick = (page: Page, answer: 'Done' | 'Stays', line: string) =>
  page.getByRole('button', { name: `${answer}: ${line}`, exact: true });
const progress = (page: Page) => page.getByRole('status').filter({ hasText: 'put back' });
const toPage = (page: Page, name: string) =>
  page.getByRole('navigation', { name: 'Pages of this rig' }).getByRole('link', { name, exact: true }).click();

const ADDRESS = 'First bar · 1: Set the address: 2:101 → 1:1.';
const COLOUR = 'First bar · 1: Colour: L201 → R26.';
const PLUG = 'First bar · 2: Plug: circuit A-9 → A-2.';
const SECOND = 'Second bar · 1: Set the address: 3:1 → 1:41.';

test('a show is put back by two at once, what stays is proposed to the house, and its crew takes it', async ({
  browser,
  baseURL,
}) => {
  const base = String(baseURL);
  const technician = await sit(browser, 'technician', base);
  const { house, show } = await houseAndShow(technician.page, base);
  const designer = await sit(browser, 'designer', base, PHONE);
  const desk = await sit(browser, 'designer', base);

  // The show is changed by two people.
  await technician.page.goto(`${base}${show}`);
  await write(technician.page, 1, 'address', '2:101');
  await write(technician.page, 2, 'circuit', 'A-9');
  await desk.page.goto(`${base}${show}`);
  await write(desk.page, 1, 'colour', 'L201');
  await write(desk.page, 3, 'address', '3:1');
  await saved(technician.page);
  await saved(desk.page);

  // Load-out: one at a desk with the keyboard, one in the gangway with a thumb.
  await toPage(technician.page, 'Put back');
  await expect(
    technician.page.getByText(/^Put back to revision 1 of House .*, as which this rig began\.$/),
  ).toBeVisible();
  await expect(progress(technician.page)).toHaveText('0 of 4 put back · 4 to do');
  await expect(technician.page.getByRole('region', { name: 'First bar' })).toContainText('3 of 3 left');
  expect(await axeFaults(technician.page)).toEqual([]);
  await designer.page.goto(`${base}${show}/restore`);
  await expect(progress(designer.page)).toHaveText('0 of 4 put back · 4 to do');
  const thumb = tick(designer.page, 'Done', SECOND);
  const box = await thumb.boundingBox();
  expect(Math.min(box?.height ?? 0, box?.width ?? 0)).toBeGreaterThanOrEqual(TARGET);
  const [wide, room] = await designer.page.evaluate(() => [document.documentElement.scrollWidth, window.innerWidth]);
  expect(wide).toBeLessThanOrEqual(room ?? 0);
  expect(await axeFaults(designer.page)).toEqual([]);

  await thumb.tap();
  await expect(technician.page.getByText(/^done · Odile Fenn, /)).toBeVisible();
  await tick(technician.page, 'Done', ADDRESS).focus();
  await press(technician.page, 'Space');
  await expect(designer.page.getByText(/^done · Bram Kettle, /)).toBeVisible();
  await press(technician.page, 'ArrowDown', 'ArrowRight', 'Space');
  await expect(tick(technician.page, 'Stays', COLOUR)).toBeFocused();
  await press(technician.page, 'ArrowLeft', 'ArrowDown');
  await expect(tick(technician.page, 'Done', PLUG)).toBeFocused();
  await expect(progress(designer.page)).toHaveText('2 of 4 put back · 1 stays as it is · 1 to do');
  // Nothing moved under the thumb: what is ticked is hidden when somebody asks.
  await expect(tick(designer.page, 'Done', SECOND)).toHaveAttribute('aria-pressed', 'true');
  await designer.page.getByRole('button', { name: 'Hide 3 ticked lines' }).tap();
  await expect(tick(designer.page, 'Done', SECOND)).toHaveCount(0);
  await designer.page.getByRole('button', { name: 'All', exact: true }).tap();
  await expect(tick(designer.page, 'Done', SECOND)).toBeVisible();

  // A tick is taken back by pressing it again, and a line of the show that is undone keeps its tick in words.
  await tick(technician.page, 'Done', ADDRESS).click();
  await expect(progress(designer.page)).toHaveText('1 of 4 put back · 1 stays as it is · 2 to do');
  await desk.page.bringToFront();
  await write(desk.page, 3, 'address', '1:41');
  await expect(technician.page.getByRole('region', { name: 'Ticks whose line is gone' })).toContainText(
    'Second bar · 1: Set the address · done · Odile Fenn',
  );
  await expect(progress(technician.page)).toHaveText('0 of 3 put back · 1 stays as it is · 2 to do');

  const downloading = technician.page.waitForEvent('download');
  await technician.page.getByRole('button', { name: 'Take out as CSV' }).click();
  const csv = await readFile(await (await downloading).path(), 'utf8');
  expect(csv).toContain('First bar,1,1,Colour,L201,R26,stays as it is,Bram Kettle,');
  expect(csv).toContain('First bar,2,2,Plug,circuit A-9,circuit A-2,to do,,');

  await technician.page.getByRole('button', { name: 'Propose to the house…' }).click();
  const dialog = technician.page.getByRole('dialog');
  await expect(dialog).toContainText('First bar · 1: Colour: R26 → L201.');
  await dialog.getByLabel('Words to the crew of the house').fill('It is cut in already');
  expect(await axeFaults(technician.page)).toEqual([]);
  await dialog.getByRole('button', { name: 'Propose it' }).click();
  await expect(technician.page.getByText('open', { exact: true })).toBeVisible();

  // The house's crew sees it against its rig as it is now.
  await technician.page.goto(`${base}${house}/restore`);
  await expect(
    technician.page.getByText(/^1 change from Show .* \(Saltwind Touring\), by Bram Kettle, /),
  ).toBeVisible();
  expect(await axeFaults(technician.page)).toEqual([]);
  await technician.page.getByRole('button', { name: 'Look at it…' }).click();
  await expect(dialog).toContainText('It is cut in already');
  await expect(dialog.getByRole('checkbox')).toBeChecked();
  expect(await axeFaults(technician.page)).toEqual([]);
  await dialog.getByLabel('Words to the crew of the show').fill('Thank you');
  await dialog.getByRole('button', { name: 'Take 1 part' }).click();
  await expect(dialog).toHaveCount(0);
  await expect(technician.page.getByText(/accepted by Bram Kettle, .*: Thank you/)).toBeVisible();
  await saved(technician.page);
  await toPage(technician.page, 'Sheet');
  await expect(technician.page.locator('[data-column="colour"]', { hasText: 'L201' })).toBeVisible();

  await designer.page.reload();
  await expect(designer.page.getByText(/^accepted, .*: Thank you$/)).toBeVisible();
  expect([...technician.complaints, ...designer.complaints, ...desk.complaints]).toEqual([]);
});

test('what the house changed since is left unless somebody asks for it, and a newer record can be put back to', async ({
  browser,
  baseURL,
}) => {
  const base = String(baseURL);
  const { page, complaints } = await sit(browser, 'technician', base);
  const { house, show } = await houseAndShow(page, base);
  await page.goto(`${base}${show}`);
  await write(page, 1, 'colour', 'L201');
  await write(page, 2, 'colour', 'L202');
  await toPage(page, 'Put back');
  await tick(page, 'Stays', 'First bar · 1: Colour: L201 → R26.').click();
  await tick(page, 'Stays', 'First bar · 2: Colour: L202 → R26.').click();
  await page.getByRole('button', { name: 'Propose to the house…' }).click();
  await page.getByRole('dialog').getByRole('button', { name: 'Propose it' }).click();
  await expect(page.getByText('open', { exact: true })).toBeVisible();

  await page.goto(`${base}${house}`);
  await write(page, 2, 'colour', 'G120');
  await saved(page);
  await call(page, 'revisions.freeze', { rigId: house.slice(6), note: 'Later', accepted: { by: '', keys: [] } });
  await toPage(page, 'From shows');
  await page.getByRole('button', { name: 'Look at it…' }).click();
  const dialog = page.getByRole('dialog');
  const line = (text: string) => dialog.getByRole('listitem').filter({ hasText: text });
  await expect(line('First bar · 1').getByRole('checkbox')).toBeChecked();
  await expect(line('First bar · 2')).toContainText(
    'Somebody has changed this in the house rig since. Taking it overwrites that. It says G120 now.',
  );
  await expect(line('First bar · 2').getByRole('checkbox')).not.toBeChecked();
  await dialog.getByRole('button', { name: 'Take 1 part' }).click();
  await expect(dialog).toHaveCount(0);
  await toPage(page, 'Sheet');
  await expect(page.locator('[data-column="colour"]', { hasText: 'L201' })).toBeVisible();
  await expect(page.locator('[data-column="colour"]', { hasText: 'G120' })).toBeVisible();
  await saved(page);

  await page.goto(`${base}${show}/restore`);
  await page.getByLabel('Put back to').selectOption({ index: 1 });
  await expect(tick(page, 'Done', 'First bar · 2: Colour: L202 → G120.')).toBeVisible();
  await expect(page.getByText('2 ticks on the sheet of another record are not counted here.')).toBeVisible();
  expect(complaints).toEqual([]);
});

test('without a network the sheet opens again and is ticked, and what was ticked goes out afterwards', async ({
  browser,
  baseURL,
}) => {
  const base = String(baseURL);
  const { page, context, complaints } = await sit(browser, 'technician', base);
  const { show } = await houseAndShow(page, base);
  await page.goto(`${base}${show}`);
  await write(page, 1, 'colour', 'L201');
  await saved(page);
  await toPage(page, 'Put back');
  const done = tick(page, 'Done', 'First bar · 1: Colour: L201 → R26.');
  await expect(done).toBeVisible();
  await page.evaluate(async () => void (await navigator.serviceWorker.ready));
  await page.reload();
  await expect(done).toBeVisible();

  await context.setOffline(true);
  await page.goto(`${base}${show}/restore`);
  await done.click();
  await expect(done).toHaveAttribute('aria-pressed', 'true');
  await expect(page.getByText('on this device only')).toBeVisible();
  await context.setOffline(false);
  const other = await sit(browser, 'designer', base);
  await other.page.goto(`${base}${show}/restore`);
  await other.page.getByRole('button', { name: 'All', exact: true }).click();
  await expect(other.page.getByText(/^done · Bram Kettle, /)).toBeVisible();
  expect([...complaints, ...other.complaints]).toEqual([]);
});

test('a rig that began empty says how one comes to such a sheet', async ({ page }) => {
  await enterDemo(page, 'technician');
  const rig = await call<{ id: string }>(page, 'rigs.create', {
    crewId: 'demo-touring',
    name: fresh('Empty'),
    kind: 'show',
  });
  await page.goto(`/rigs/${rig.id}/restore`);
  await expect(page.getByText(/^This rig began empty, so that there is no house rig to put back\./)).toBeVisible();
  await expect(page.getByRole('link', { name: 'Put back', exact: true })).toHaveCount(0);
});
