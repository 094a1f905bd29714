import { expect, type Page, test } from '@playwright/test';
import { axeFaults } from './support/axe-faults.ts';
import { enterDemo, fresh, makeRig } from './support/doors.ts';
import { watchConsole } from './support/watch-console.ts';

const rowOf = (page: Page, channel: number) =>
  page
    .locator('[role="row"]')
    .filter({ has: page.locator('[data-column="channel"]', { hasText: new RegExp(`^${channel}(\\D|$)`) }) });

const cellOf = (page: Page, channel: number, column: string) =>
  rowOf(page, channel).locator(`[data-column="${column}"]`);

const open = (page: Page, panel: string) =>
  page.getByRole('toolbar').getByRole('button', { name: panel, exact: true }).click();

/** A rig that calls the library's Halyard spot by a name of its own, with the 22 slots its Standard mode once had. */
const LIST = [
  'Channel\tPosition\tUnit\tType\tMode\tFootprint\tAddress',
  ...[1, 2, 3, 4].map((unit) => `${unit}\tBar\t${unit}\tHalyard\tStandard\t22\t1:${1 + (unit - 1) * 22}`),
].join('\n');

async function bringIn(page: Page, path: string): Promise<void> {
  await page.getByRole('navigation').getByRole('link', { name: 'Lists in' }).click();
  await page.getByLabel('Or paste the list').fill(LIST);
  await page.getByRole('button', { name: 'Read what I pasted' }).click();
  await page.getByRole('button', { name: 'Bring in 4 fixtures' }).click();
  await page.waitForURL(`**${path}`);
  await expect(cellOf(page, 4, 'address')).toHaveText('1:67');
}

test('a type of a list is found in the library, taken with its neighbours moved out of the way, and taken back', async ({
  page,
}) => {
  const complaints = watchConsole(page);
  await enterDemo(page, 'designer');
  await bringIn(page, await makeRig(page, fresh('Takes types')));
  await open(page, 'Types');
  await page.getByRole('button', { name: 'find it in the library' }).click();
  await page.getByRole('combobox', { name: 'Maker, model, mode or slots' }).fill('halyard');
  await page.keyboard.press('Enter');
  const dialog = page.getByRole('dialog');
  await expect(dialog.getByRole('heading', { name: /Halyard spot, revision 2/ })).toBeVisible();
  await expect(dialog.getByText('4 units set to Standard: 22 slots become 24 slots')).toBeVisible();
  await expect(dialog.getByText('It would raise 3 blockers:')).toBeVisible();
  await expect(dialog.getByText(/Flashing light can bring on seizures/)).toBeVisible();
  expect(await axeFaults(page)).toEqual([]);
  await dialog.getByRole('button', { name: /^Take it and move \d units?$/ }).press('Enter');
  await expect(cellOf(page, 1, 'footprint')).toHaveText('24');
  await expect(page.getByRole('button', { name: '0 blockers' })).toBeVisible();
  await expect(page.getByText(/Halyard spot, revision 2/)).toBeVisible();
  await page.getByRole('button', { name: 'Close' }).click();
  await page.keyboard.press('Control+z');
  await expect(cellOf(page, 1, 'footprint')).toHaveText('22');
  await expect(cellOf(page, 4, 'address')).toHaveText('1:67');
  await page.keyboard.press('Control+y');
  await expect(cellOf(page, 1, 'footprint')).toHaveText('24');
  expect(complaints).toEqual([]);
});

test('a type new to the rig comes with the modes asked for, and a unit set to one takes its slots', async ({
  page,
}) => {
  await enterDemo(page, 'technician');
  await bringIn(page, await makeRig(page, fresh('New types')));
  await open(page, 'Types');
  await page.getByRole('button', { name: 'Take a type from the library' }).click();
  await page.getByRole('combobox', { name: 'Maker, model, mode or slots' }).fill('rgbw');
  await page.keyboard.press('Enter');
  await page.getByRole('checkbox', { name: 'Intensity and colours (5 slots)' }).uncheck();
  await page.getByRole('button', { name: 'Take it', exact: true }).click();
  await expect(page.getByRole('textbox', { name: 'Mode of RGBW' })).toHaveValue('Colours');
  await page.getByRole('button', { name: 'Close' }).click();
  await cellOf(page, 1, 'type').click();
  await page.keyboard.type('RGBW');
  await page.keyboard.press('Tab');
  await page.keyboard.type('Colours');
  await page.keyboard.press('Enter');
  await expect(cellOf(page, 1, 'footprint')).toHaveText('4');
});

test('firmware that is wanted, and somebody who answers for a hazard, are seen by everybody', async ({
  page,
  browser,
}) => {
  await enterDemo(page, 'designer');
  const path = await makeRig(page, fresh('Firmware and hazards'));
  await bringIn(page, path);
  await open(page, 'Types');
  await page.getByRole('button', { name: 'find it in the library' }).click();
  await page.getByRole('combobox', { name: 'Maker, model, mode or slots' }).fill('halyard');
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: /^Take it and move/ }).click();
  await page.getByRole('button', { name: 'Close' }).click();
  await cellOf(page, 2, 'firmware').click();
  await page.keyboard.type('1.3');
  await page.keyboard.press('Enter');
  await open(page, 'Firmware');
  const wanted = page.getByRole('textbox', { name: 'Firmware wanted of Halyard' });
  await wanted.fill('2.x');
  await wanted.press('Enter');
  await expect(page.getByText('1 unit with another:')).toBeVisible();
  await expect(page.getByText('3 units nobody has looked at:')).toBeVisible();
  await open(page, 'Hazards');
  await page.getByRole('textbox', { name: 'Who answers for flashing light' }).fill('Ona Reeve');
  await page.getByRole('button', { name: 'They answer for it' }).click();
  await expect(page.getByText(/^Ona Reeve answers for it, since/)).toBeVisible();
  expect(await axeFaults(page)).toEqual([]);
  const context = await browser.newContext();
  const other = await context.newPage();
  await enterDemo(other, 'technician');
  await other.goto(path);
  await expect(cellOf(other, 2, 'firmware')).toContainText('1.3');
  await open(other, 'Findings');
  await expect(
    other.getByText(/Firmware is 1\.3; wanted is 2\.x|firmware is 1\.3; wanted is 2\.x/).first(),
  ).toBeVisible();
  await open(other, 'Hazards');
  await expect(other.getByText(/^Ona Reeve answers for it, since/)).toBeVisible();
  await context.close();
});

test('what the demo has copied is behind the library, and what taking it would do is only looked at', async ({
  page,
}) => {
  await enterDemo(page, 'designer');
  await page.getByRole('link', { name: 'The Lantern Tide' }).first().click();
  await open(page, 'Findings');
  await page.getByRole('button', { name: 'see what it changes' }).first().click();
  await page.getByRole('button', { name: 'see what it changes' }).first().click();
  await expect(page.getByRole('dialog').getByText('8 units set to Standard: 22 slots become 24 slots')).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(page.getByRole('dialog')).toHaveCount(0);
  await expect(page.getByRole('heading', { name: 'Types in use' })).toBeVisible();
});
