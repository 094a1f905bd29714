import { type Browser, devices, expect, type Page, test } from '@playwright/test';
import { axeFaults } from './support/axe-faults.ts';
import { enterDemo, fresh, makeRig } from './support/doors.ts';
import { press } from './support/press.ts';
import { watchConsole } from './support/watch-console.ts';

/** Three units that clash in a row, and two that clash by themselves. */
const LIST = [
  'Channel\tPosition\tUnit\tType\tMode\tFootprint\tAddress',
  '1\tFirst bar\t1\tTern profile\tTen\t10\t1:1',
  '2\tFirst bar\t2\tTern profile\tTen\t10\t1:6',
  '3\tFirst bar\t3\tTern profile\tTen\t10\t1:12',
  '4\tFirst bar\t4\tTern profile\tTen\t10\t2:1',
  '5\tFirst bar\t5\tTern profile\tTen\t10\t2:6',
].join('\n');

const rowOf = (page: Page, channel: number) =>
  page
    .locator('[role="row"]')
    .filter({ has: page.locator('[data-column="channel"]', { hasText: new RegExp(`^${channel}(\\D|$)`) }) });

const addressOf = (page: Page, channel: number) => rowOf(page, channel).locator('[data-column="address"]');

const text = (address: string) => new RegExp(`${address}$`);

async function enter(browser: Browser, baseURL: string, as: 'designer' | 'technician', device = {}): Promise<Page> {
  const context = await browser.newContext({ baseURL, ...device });
  const page = await context.newPage();
  await enterDemo(page, as, baseURL);
  return page;
}

async function makeClashes(page: Page): Promise<string> {
  const path = await makeRig(page, fresh('Locked'));
  await page.getByRole('navigation').getByRole('link', { name: 'Lists in' }).click();
  await page.getByLabel('Or paste the list').fill(LIST);
  await page.getByRole('button', { name: 'Read what I pasted' }).click();
  await page.getByRole('button', { name: 'Bring in 5 fixtures' }).click();
  await page.waitForURL(`**${path}`);
  return path;
}

/** What the sheet says of the last step. */
const said = (page: Page) => page.getByRole('status').filter({ hasText: 'Dismiss' });

/** The toolbar's panel of plans, open. */
async function openPlans(page: Page): Promise<void> {
  const tools = page.getByRole('toolbar', { name: 'Tools of the sheet' });
  await tools.getByRole('button', { name: 'Plans', exact: true }).click();
}

test('two locked units stay where they are while all others move; everybody sees the locks, at the desk and on a phone', async ({
  browser,
  baseURL,
}) => {
  const server = String(baseURL);
  const designer = await enter(browser, server, 'designer');
  const complaints = watchConsole(designer);
  const path = await makeClashes(designer);

  // Locked by keyboard, in one's name.
  await addressOf(designer, 2).click();
  await press(designer, 'F7');
  await expect(designer.getByText('1 unit is locked now: no plan moves it.')).toBeVisible();
  await expect(addressOf(designer, 2)).toHaveText(/^locked /);
  // Locked from the panel, with a reason.
  await addressOf(designer, 5).click();
  await openPlans(designer);
  await designer.getByLabel('Why, or who says so').fill('focused');
  await designer.getByRole('button', { name: 'Lock 1 unit' }).click();
  await expect(addressOf(designer, 5)).toHaveText(/^locked /);

  // Its cell takes nothing, and says why.
  await addressOf(designer, 5).click();
  await press(designer, '9');
  await expect(said(designer)).toHaveText(/^First bar · 5 is locked \(focused\): its address stays/);
  await press(designer, 'Delete');
  await expect(said(designer)).toHaveText(/^Nothing was changed\. First bar · 5 is locked/);
  // The plan beside the clash is one for the other unit.
  await expect(designer.getByRole('button', { name: /^move 4 to/ }).first()).toBeVisible();

  // One move would do for the first three; with the middle one locked it takes two.
  await designer.getByRole('button', { name: 'Clear every clash' }).click();
  const dialog = designer.getByRole('dialog', { name: 'Clear every clash' });
  await expect(dialog.getByText('3 units move')).toBeVisible();
  await dialog.getByRole('button', { name: 'Apply' }).click();
  await expect(dialog).toBeHidden();
  await expect(addressOf(designer, 2)).toHaveText(text('1:6'));
  await expect(addressOf(designer, 5)).toHaveText(text('2:6'));
  for (const [channel, old] of [
    [1, '1:1'],
    [3, '1:12'],
    [4, '2:1'],
  ] as const) {
    await expect(addressOf(designer, channel)).not.toHaveText(new RegExp(`^${old}\\D*$`));
  }
  expect(await axeFaults(designer)).toEqual([]);

  // The other person sees them, makes a clash between locked units by locking a third, and is told who holds it.
  const technician = await enter(browser, server, 'technician');
  await technician.goto(path);
  await expect(addressOf(technician, 2)).toHaveText(/^locked /);
  await addressOf(technician, 4).click();
  await technician.keyboard.type('2:8');
  await press(technician, 'Enter');
  await addressOf(technician, 4).click();
  await press(technician, 'F7', 'F9');
  await expect(said(technician)).toHaveText(
    /^Locked units hold their places: First bar · 4 \(Bram Kettle\), First bar · 5 \(focused\)\. Unlock one of them first/,
  );

  // On the ribbons a locked block is not picked up.
  await technician.getByRole('navigation').getByRole('link', { name: 'Universes' }).click();
  await technician.getByRole('button', { name: 'All ribbons' }).click();
  await technician.getByRole('button', { name: 'First bar · 5, slots 6 to 15, locked: focused' }).focus();
  await press(technician, 'm');
  await expect(technician.getByText(/^First bar · 5 is locked \(focused\)/)).toBeVisible();

  // On a phone the unit says so, and one tap unlocks it for everybody.
  const phone = await enter(browser, server, 'technician', devices['Pixel 7']);
  await phone.goto(path);
  await phone.getByRole('button', { name: /First bar · 5 channel/ }).tap();
  await expect(phone.getByText('Locked: focused. Plans leave its address where it is.')).toBeVisible();
  await expect(phone.getByLabel('Address', { exact: true })).toBeDisabled();
  expect(await axeFaults(phone)).toEqual([]);
  await phone.getByRole('button', { name: 'Unlock it' }).tap();
  await expect(phone.getByRole('button', { name: 'Lock its address' })).toBeVisible();
  await expect(addressOf(designer, 5)).not.toHaveText(/locked/);
  expect(complaints).toEqual([]);
});

test('what a planned change would need is said, and changes nothing', async ({ browser, baseURL }) => {
  const page = await enter(browser, String(baseURL), 'designer');
  await makeClashes(page);
  await addressOf(page, 1).click();
  await openPlans(page);
  await page.getByLabel('How many more').fill('150');
  await page.getByRole('button', { name: 'Say what they need' }).click();
  await expect(page.getByText('150 units would take 1,500 slots.')).toBeVisible();
  await expect(
    page.getByText(/^The others need 2 new universes: universes 3 and 4; fewer are not possible/),
  ).toBeVisible();
  await page.getByRole('button', { name: 'Say what that needs' }).click();
  await expect(page.getByText('Nothing would change: it is so already.')).toBeVisible();
  await expect(addressOf(page, 1)).toHaveText(/^1:1\D*$/);
});
