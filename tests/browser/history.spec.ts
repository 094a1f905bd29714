import { type Browser, expect, type Page, test } from '@playwright/test';
import { axeFaults } from './support/axe-faults.ts';
import { enterDemo, fresh, makeRig } from './support/doors.ts';
import { press } from './support/press.ts';
import { watchConsole } from './support/watch-console.ts';

/** What a thumb hits, in CSS pixels. Source: WCAG 2.1, success criterion 2.5.5. */
const TARGET = 44;

/** Four fixtures of ten slots each. */
const LIST = [
  'Channel\tPosition\tUnit\tType\tMode\tFootprint\tAddress',
  ...[1, 2, 3, 4].map((unit) => `${unit}\tFirst bar\t${unit}\tTern profile\tTen\t10\t1:${unit * 20}`),
].join('\n');

const DESK = { width: 1440, height: 900 };
const PHONE = { width: 390, height: 844 };

async function sit(browser: Browser, as: 'designer' | 'technician', size: { width: number; height: number }) {
  const context = await browser.newContext({ viewport: size, hasTouch: size.width < 500, isMobile: size.width < 500 });
  const page = await context.newPage();
  const complaints = watchConsole(page);
  await enterDemo(page, as);
  return { page, complaints };
}

const saved = (page: Page) => expect(page.getByText('saved', { exact: true })).toBeVisible();
const pageOf = (page: Page, name: string) => page.getByRole('navigation').getByRole('link', { name, exact: true });
const addressOf = (page: Page, channel: number) =>
  page
    .locator('[role="row"]')
    .filter({ has: page.locator('[data-column="channel"]', { hasText: new RegExp(`^${channel}(\\D|$)`) }) })
    .locator('[data-column="address"]');
/** What the address of a unit is, for whoever sits at this page. */
const stands = (page: Page, channel: number, address: string) =>
  expect(addressOf(page, channel)).toHaveText(new RegExp(`${address}(\\D|$)`));
const lines = (page: Page) => page.locator('[data-step]');
const line = (page: Page, text: string) => lines(page).filter({ hasText: text });

/** Gives a unit another address, in the sheet. */
async function write(page: Page, channel: number, address: string): Promise<void> {
  await addressOf(page, channel).click();
  await page.keyboard.type(address);
  await press(page, 'Enter');
  await saved(page);
}

test('history says who did what, finds it, and goes back to any moment as an edit that can be undone', async ({
  browser,
}) => {
  // Three people, one after the other.
  test.setTimeout(180_000);
  const designer = await sit(browser, 'designer', DESK);
  const { page } = designer;
  const path = await makeRig(page, fresh('Told'));
  await pageOf(page, 'History').click();
  await expect(page.getByText('Nothing was done yet.')).toBeVisible();
  await pageOf(page, 'Lists in').click();
  await page.getByLabel('Or paste the list').fill(LIST);
  await page.getByRole('button', { name: 'Read what I pasted' }).click();
  await page.getByRole('button', { name: 'Bring in 4 fixtures' }).click();
  await page.waitForURL(`**${path}`);
  await saved(page);

  // The technician moves a unit, the designer another.
  const technician = await sit(browser, 'technician', DESK);
  await technician.page.goto(path);
  await write(technician.page, 1, '2:101');
  await stands(page, 1, '2:101');
  await write(page, 2, '1:200');

  // From the cell in the sheet to what was ever done to it.
  await addressOf(page, 1).click();
  await page.getByRole('button', { name: 'Slots', exact: true }).click();
  await page.getByRole('link', { name: 'History of its address' }).click();
  await expect(lines(page)).toHaveCount(2);
  await expect(page.getByLabel('Unit', { exact: true })).toHaveValue('First bar · 1');
  await expect(page.getByLabel('Cell', { exact: true })).toHaveValue('address');
  await page.getByRole('button', { name: 'Show everything' }).click();

  await expect(lines(page)).toHaveCount(3);
  // Of two lines that say so the first that was done.
  const moved = line(page, 'moved First bar · 1 from 1:20 to 2:101').last();
  await expect(moved).toHaveCount(1);
  await expect(line(page, 'added 4 units')).toHaveCount(1);
  const names = page.getByRole('heading', { level: 3 });
  await expect(names).toHaveText(['Odile Fenn', 'Bram Kettle', 'Odile Fenn']);
  expect(await axeFaults(page)).toEqual([]);

  // Less of it: of one person, of a unit by its name, of what was called like it.
  await page.getByLabel('Person').selectOption({ label: 'Bram Kettle' });
  await expect(lines(page)).toHaveCount(1);
  await page.getByLabel('Person').selectOption({ label: 'Anybody' });
  await page.getByLabel('Unit', { exact: true }).fill('first bar · 2');
  await expect(page.getByText('Only this unit, whatever it was called')).toBeVisible();
  await expect(lines(page)).toHaveCount(2);
  await page.getByLabel('Unit', { exact: true }).fill('no such bar');
  await expect(page.getByText('Nothing was done that fits.')).toBeVisible();
  await page.getByRole('button', { name: 'Show everything' }).click();
  await expect(lines(page)).toHaveCount(3);

  // By keyboard: down to the move, open it, and to the rig before it.
  await lines(page).first().focus();
  await press(page, 'ArrowDown', 'Enter');
  await expect(moved).toHaveAttribute('aria-expanded', 'true');
  await press(page, 'Tab');
  await expect(page.getByRole('button', { name: /^Put back: moved First bar · 1/ })).toBeFocused();
  await press(page, 'Tab', 'Enter');
  await expect(page.getByText('You are looking only: nothing here changes the rig.')).toBeVisible();
  const units = page.getByRole('table', { name: '4 units' });
  await expect(units.getByRole('row', { name: /First bar · 1/ })).toContainText('1:20');
  await expect(units.getByRole('row', { name: /First bar · 2/ })).toContainText('1:40');
  const differs = page.getByRole('region', { name: 'What going back would change' });
  await expect(differs.getByRole('listitem')).toHaveText([
    'First bar · 1Set the address: 2:101 → 1:20.',
    'First bar · 2Set the address: 1:200 → 1:40.',
  ]);
  expect(await axeFaults(page)).toEqual([]);

  // Back to it: a plan that is looked at first, seen by the other, and undone.
  await page.getByRole('button', { name: 'Go back to this…' }).click();
  const dialog = page.getByRole('dialog', { name: 'Go back to this moment' });
  await expect(dialog.getByRole('row', { name: /First bar · 1/ })).toContainText('1:20');
  expect(await axeFaults(page, { within: 'dialog' })).toEqual([]);
  await dialog.getByRole('button', { name: 'Go back', exact: true }).click();
  await expect(page.getByText('The rig is as it was then.')).toBeVisible();
  await stands(technician.page, 1, '1:20');
  await stands(technician.page, 2, '1:40');
  await expect(lines(page)).toHaveCount(4);
  await page.getByRole('button', { name: 'Undo', exact: true }).click();
  await stands(technician.page, 1, '2:101');
  await stands(technician.page, 2, '1:200');
  await expect(lines(page)).toHaveCount(5);

  // One change alone.
  await moved.click();
  await page.getByRole('button', { name: /^Put back: moved First bar · 1 from 1:20/ }).click();
  await stands(technician.page, 1, '1:20');
  await stands(technician.page, 2, '1:200');

  // A locked unit stands in the way, and is named.
  await addressOf(technician.page, 1).click();
  await technician.page.getByRole('button', { name: 'Slots', exact: true }).click();
  await technician.page.getByRole('button', { name: 'Lock its address' }).click();
  await saved(technician.page);
  await page.getByRole('button', { name: 'The rig has changed since. Show the newest' }).click();
  await expect(line(page, 'locked First bar · 1 (Bram Kettle)')).toHaveCount(1);
  await page.getByRole('button', { name: 'The rig after this' }).first().click();
  await page.getByRole('button', { name: 'Go back to this…' }).click();
  await expect(dialog.getByText(/A locked unit stands in the way.*First bar · 1/)).toBeVisible();
  await expect(dialog.getByRole('button', { name: 'Go back', exact: true })).toBeDisabled();
  await press(page, 'Escape');
  await page.goBack();
  await expect(lines(page).first()).toBeVisible();

  const phone = await sit(browser, 'technician', PHONE);
  await phone.page.goto(`${path}/history`);
  const onPhone = line(phone.page, 'moved First bar · 1 from 1:20 to 2:101').last();
  await expect(onPhone).toBeVisible();
  const wide = await phone.page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
  expect(wide).toBeLessThanOrEqual(0);
  await onPhone.tap();
  const small = await phone.page.evaluate((target) => {
    const taps = [...document.querySelectorAll('main button, main select, main input, main summary')];
    const seen = taps.filter((tap) => tap.checkVisibility() && tap.getBoundingClientRect().height > 0);
    return seen.filter((tap) => tap.getBoundingClientRect().height < target).map(({ textContent }) => textContent);
  }, TARGET);
  expect(small).toEqual([]);
  expect(await axeFaults(phone.page)).toEqual([]);
  await phone.page.getByRole('button', { name: 'The rig before this' }).tap();
  await expect(phone.page.getByRole('table', { name: '4 units' })).toBeVisible();
  expect(await phone.page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)).toBeLessThanOrEqual(
    0,
  );
  for (const { complaints } of [designer, technician, phone]) expect(complaints).toEqual([]);
});
