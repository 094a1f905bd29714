import { type Browser, expect, type Page, test } from '@playwright/test';
import { axeFaults } from './support/axe-faults.ts';
import { enterDemo, fresh, makeRig } from './support/doors.ts';
import { press } from './support/press.ts';
import { watchConsole } from './support/watch-console.ts';

/** What a thumb hits, in CSS pixels. Source: WCAG 2.1, success criterion 2.5.5. */
const TARGET = 44;

/** Six fixtures of ten slots each, the last in another universe. */
const LIST = [
  'Channel\tPosition\tUnit\tType\tMode\tFootprint\tAddress',
  ...[1, 2, 3, 4, 5].map((unit) => `${unit}\tFirst bar\t${unit}\tTern profile\tTen\t10\t1:${unit * 20}`),
  '6\tSecond bar\t1\tTern profile\tTen\t10\t2:1',
].join('\n');

async function sit(browser: Browser, as: 'designer' | 'technician', size: { width: number; height: number }) {
  const context = await browser.newContext({ viewport: size, hasTouch: size.width < 500, isMobile: size.width < 500 });
  const page = await context.newPage();
  const complaints = watchConsole(page);
  await enterDemo(page, as);
  return { page, complaints };
}

const line = (page: Page, run: string) => page.getByRole('grid', { name: `Units along run ${run}` });
const rows = (page: Page, run: string) => line(page, run).getByRole('row').locator('visible=true');
const saved = (page: Page) => expect(page.getByText('saved', { exact: true })).toBeVisible();

/** The units of a run in order, by what stands in the second cell of each row. */
const order = async (page: Page, run: string) =>
  (await line(page, run).locator('[role="row"] [role="gridcell"]:nth-child(2)').allInnerTexts()).map((text) =>
    text.replace(/\s*[■▲○].*/s, '').trim(),
  );

async function addRun(page: Page, name: string): Promise<void> {
  await page.getByRole('button', { name: 'Add a run…' }).click();
  await page.getByLabel('Name of the run').fill(name);
  await page.getByRole('button', { name: 'Add the run' }).click();
}

const DESK = { width: 1440, height: 900 };
const PHONE = { width: 390, height: 844 };

test('a run is laid by one person and seen by another, moved by keyboard, measured, and read on a phone', async ({
  browser,
}) => {
  const designer = await sit(browser, 'designer', DESK);
  const { page } = designer;
  const path = await makeRig(page, fresh('Lines'));
  await page.getByRole('navigation').getByRole('link', { name: 'Lists in' }).click();
  await page.getByLabel('Or paste the list').fill(LIST);
  await page.getByRole('button', { name: 'Read what I pasted' }).click();
  await page.getByRole('button', { name: 'Bring in 6 fixtures' }).click();
  await page.waitForURL(`**${path}`);
  await page.getByRole('navigation').getByRole('link', { name: 'Runs' }).click();
  await expect(page.getByText('No run yet.')).toBeVisible();
  await addRun(page, 'Bar A');
  await page.getByLabel('Begins at of run Bar A').selectOption({ label: 'the desk, universe 1' });
  await page.getByLabel('Metres to the first unit of run Bar A').fill('20');
  await press(page, 'Enter');

  await page.getByRole('button', { name: 'Add units…' }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel('Which units').selectOption({ label: 'Units on no run' });
  await dialog.getByLabel('Position').selectOption({ label: 'First bar' });
  await dialog.getByLabel('All 5 of these').check();
  expect(await axeFaults(page)).toEqual([]);
  await dialog.getByRole('button', { name: 'Put 5 units on the run' }).click();
  expect(await order(page, 'Bar A')).toEqual([1, 2, 3, 4, 5].map((unit) => `First bar · ${unit}`));
  await expect(page.getByText('5 units put on run Bar A.')).toBeVisible();
  await expect(page.getByText('Nobody said whether run “Bar A” is terminated')).toBeVisible();

  const technician = await sit(browser, 'technician', DESK);
  await technician.page.goto(`${path}/runs`);
  await expect(rows(technician.page, 'Bar A')).toHaveCount(6);

  // By keyboard alone: the third goes one place up, the fourth off and back.
  await line(page, 'Bar A').focus();
  await press(page, 'Home', 'ArrowDown', 'ArrowDown', 'Alt+ArrowUp');
  const moved = [1, 3, 2, 4, 5].map((unit) => `First bar · ${unit}`);
  for (const each of [page, technician.page]) await expect.poll(() => order(each, 'Bar A')).toEqual(moved);
  await press(page, 'End', 'Delete');
  await expect.poll(() => order(technician.page, 'Bar A')).toEqual(moved.slice(0, 4));
  await press(page, 'Control+z');
  await expect.poll(() => order(technician.page, 'Bar A')).toEqual(moved);

  // Both at once, at different ends: both keep what they did.
  await line(technician.page, 'Bar A').focus();
  await press(page, 'Home');
  await press(technician.page, 'End');
  await Promise.all([press(page, 'Alt+ArrowDown'), press(technician.page, 'Alt+ArrowUp')]);
  const both = [3, 1, 2, 5, 4].map((unit) => `First bar · ${unit}`);
  for (const each of [page, technician.page]) await expect.poll(() => order(each, 'Bar A')).toEqual(both);

  // Metres: of the chosen one, the next stop of Tab.
  await press(page, 'Home', 'ArrowDown', 'Tab');
  await page.keyboard.type('2,5');
  await press(page, 'Enter');
  await expect(line(technician.page, 'Bar A').getByRole('row', { name: /First bar · 1/ })).toContainText('22.5');

  await expect(line(technician.page, 'Bar A').getByRole('row', { name: /First bar · 1/ })).toContainText('Odile Fenn');

  // A unit of another universe is found, beside the run and for both.
  await page.getByRole('button', { name: 'Add units…' }).click();
  await dialog.getByLabel('Which units').selectOption({ label: 'Units on no run' });
  await dialog.getByLabel('Second bar · 1').check();
  await dialog.getByRole('button', { name: 'Put 1 unit on the run' }).click();
  for (const each of [page, technician.page]) {
    await expect(
      each.getByText('Run “Bar A” carries universe 1, and Second bar · 1 listens to universe 2.'),
    ).toBeVisible();
  }
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(technician.page.getByText('listens to universe 2')).toHaveCount(0);

  // A splitter at its end, and a run from its second output.
  await page.getByRole('button', { name: 'Add a splitter…' }).click();
  await dialog.getByLabel('Name of the splitter').fill('Split');
  await dialog.getByLabel('Outputs').fill('2');
  await dialog.getByRole('button', { name: 'Add the splitter' }).click();
  await expect.poll(() => order(page, 'Bar A')).toEqual([...both, 'Splitter Split']);
  await addRun(page, 'Bar B');
  await page.getByLabel('Begins at of run Bar B').selectOption({ label: 'splitter “Split”, output 2' });
  await expect(page.getByRole('option', { name: /Bar B.*universe 1 · splitter “Split”, output 2/ })).toBeVisible();
  expect(await axeFaults(page)).toEqual([]);

  // What is chosen here is chosen in the sheet, and its slots say how its data comes.
  await page.getByRole('option', { name: /^Bar A/ }).click();
  await line(page, 'Bar A').focus();
  await press(page, 'Home', 'ArrowDown', 'ArrowDown', 'Enter');
  await expect(page.getByRole('region', { name: 'The way its data comes' })).toContainText('3rd of 6');
  await press(page, 'Escape');
  await page.getByRole('navigation').getByRole('link', { name: 'Sheet', exact: true }).click();
  const selected = page.getByRole('row').filter({ has: page.locator('[role="gridcell"][aria-selected="true"]') });
  await expect(selected).toContainText('1:40');
  await saved(page);

  const sheet = await page.request.get(`/api${path}/sheets/runs.csv`);
  const text = await sheet.text();
  expect(text).toContain('Run sheet');
  expect(text).toContain('"the desk, universe 1",2,unit,First bar,1');

  const phone = await sit(browser, 'technician', PHONE);
  await phone.page.goto(`${path}/runs`);
  await phone.page.getByLabel('Run', { exact: true }).selectOption({ label: 'Bar A: universe 1 · 5 units' });
  await expect(rows(phone.page, 'Bar A').first()).toBeVisible();
  const wide = await phone.page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
  expect(wide).toBeLessThanOrEqual(0);
  const small = await phone.page.evaluate((target) => {
    const taps = [...document.querySelectorAll('button, select, [role="row"][aria-selected]')];
    const seen = taps.filter((tap) => tap.checkVisibility() && tap.getBoundingClientRect().height > 0);
    return seen.filter((tap) => tap.getBoundingClientRect().height < target).map(({ textContent }) => textContent);
  }, TARGET);
  expect(small).toEqual([]);
  await line(phone.page, 'Bar A')
    .getByRole('row', { name: /First bar · 2/ })
    .tap();
  await phone.page.getByRole('button', { name: 'Up', exact: true }).tap();
  const thumbed = [3, 2, 1, 5, 4].map((unit) => `First bar · ${unit}`);
  await expect.poll(() => order(phone.page, 'Bar A')).toEqual([...thumbed, 'Splitter Split']);
  expect(await axeFaults(phone.page)).toEqual([]);
  for (const { complaints } of [designer, technician, phone]) expect(complaints).toEqual([]);
});
