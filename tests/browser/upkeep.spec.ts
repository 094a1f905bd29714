import { expect, type Page, test } from '@playwright/test';
import { axeFaults } from './support/axe-faults.ts';
import { fresh, makeRig } from './support/doors.ts';
import { press } from './support/press.ts';
import { bringIn, DESK, fitsThumb, PHONE, sit } from './support/sit.ts';

const LIST = [
  'Channel\tPosition\tUnit\tType\tMode\tFootprint\tAddress',
  ...[1, 2, 3].map((unit) => `${unit}\tFirst bar\t${unit}\tTern profile\tTen\t10\t1:${unit * 20}`),
];

async function report(page: Page, unit: string, what: string): Promise<void> {
  const form = page.getByRole('form', { name: 'Report a fault' });
  await form.getByLabel('Unit').fill(unit);
  await form.getByLabel('What is wrong').fill(what);
  await form.getByRole('button', { name: 'Report a fault' }).click();
}

const part = (page: Page, name: string) => page.getByRole('region', { name, exact: true });

test('two people report, mend and swap, and everything of a unit stands in one place', async ({ browser }) => {
  const designer = await sit(browser, 'designer', DESK);
  const { page } = designer;
  const path = await makeRig(page, fresh('Mending'));
  await bringIn(page, path, LIST);
  await page.getByRole('link', { name: 'House', exact: true }).click();
  await page.getByRole('textbox', { name: 'Add a spare', exact: true }).fill('1 Wren wash, Six, crate 4');
  await press(page, 'Enter');
  await page.getByRole('link', { name: 'Upkeep', exact: true }).click();
  const technician = await sit(browser, 'technician', DESK);
  await technician.page.goto(`${path}/upkeep`);
  await expect(technician.page.getByText('No fault is open.')).toBeVisible();

  // Both at once, of two units; who saw it and when need not be typed.
  await Promise.all([report(page, 'First bar 2', 'does not tilt'), report(technician.page, '3', 'flickers')]);
  for (const each of [page, technician.page]) {
    await expect(each.getByText('2 faults open')).toBeVisible();
    await expect(part(each, 'Faults').getByRole('listitem').filter({ hasText: 'does not tilt' })).toContainText(
      'Odile Fenn',
    );
    await expect(part(each, 'Faults').getByRole('listitem').filter({ hasText: 'flickers' })).toContainText(
      'First bar · 3',
    );
  }
  await report(page, 'First bar 9', 'gone');
  await expect(page.getByRole('alert').filter({ hasText: 'No unit is called so.' })).toBeVisible();

  // Whoever looks at the sheet sees it there.
  await technician.page.getByRole('link', { name: 'Sheet', exact: true }).click();
  const row = technician.page.getByRole('row').filter({ hasText: '1:40' });
  await expect(row).toContainText('First bar · 2 has a fault: “does not tilt”');
  await technician.page.getByRole('link', { name: 'Upkeep', exact: true }).click();

  // Mended by one, seen by the other.
  await technician.page.getByRole('button', { name: 'Mark mended: First bar · 3, flickers' }).click();
  const dialog = technician.page.getByRole('dialog');
  await dialog.getByRole('button', { name: 'Mark it mended' }).click();
  await expect(dialog.getByRole('alert')).toContainText('Nothing is said of what was done.');
  await dialog.getByLabel('What was done').fill('new lamp');
  expect(await axeFaults(technician.page)).toEqual([]);
  await dialog.getByRole('button', { name: 'Mark it mended' }).click();
  await expect(page.getByText('1 fault mended')).toBeVisible();
  await expect(part(page, 'Faults').getByRole('listitem').filter({ hasText: 'new lamp' })).toContainText('Bram Kettle');

  // A swap with a spare of another type: said before, done in one step, its number and address stay.
  await page.getByRole('button', { name: 'Swap the device of First bar · 2' }).click();
  const swap = page.getByRole('dialog');
  await swap.getByLabel('What comes in').selectOption({ label: 'Wren wash, Six · 1 left · crate 4' });
  await swap.getByLabel('Serial number out').fill('A 17');
  await swap.getByLabel('Serial number in').fill('B 4');
  await swap.getByLabel('Why').fill('does not tilt');
  await expect(swap.getByRole('status')).toContainText('Type: Tern profile → Wren wash');
  await expect(swap.getByRole('status')).toContainText('type “Wren wash” is not known in this rig');
  expect(await axeFaults(page)).toEqual([]);
  await swap.getByRole('button', { name: 'Swap it' }).click();
  for (const each of [page, technician.page]) {
    await expect(each.getByText('No fault is open.')).toBeVisible();
    await expect(part(each, 'Swaps').getByRole('listitem')).toContainText('A 17 out, B 4 in, from Wren wash, crate 4');
  }
  await page.getByRole('button', { name: 'Undo', exact: true }).click();
  await expect(technician.page.getByText('1 fault open')).toBeVisible();
  await expect(part(technician.page, 'Swaps').getByRole('listitem')).toHaveCount(0);
  await page.getByRole('button', { name: 'Redo', exact: true }).click();
  await expect(part(technician.page, 'Swaps').getByRole('listitem')).toHaveCount(1);

  // Readings over time, and all of it at the unit.
  const readings = part(page, 'Hours and firmware');
  await readings.getByLabel('Unit').fill('First bar 1');
  for (const [hours, day] of [
    ['100', '2026-10-01'],
    ['160,5', '2026-11-01'],
  ] as const) {
    await readings.getByLabel('Hours').fill(hours);
    await readings.getByLabel('On', { exact: true }).fill(day);
    await readings.getByRole('button', { name: 'Note it' }).click();
    await expect(readings.getByLabel('Hours')).toHaveValue('');
  }
  await expect(part(technician.page, 'Hours and firmware')).toContainText('160.5 lamp hours, 60.5 more');
  await readings.getByLabel('What', { exact: true }).selectOption({ label: 'firmware' });
  await readings.getByLabel('Firmware', { exact: true }).fill('1.6');
  await readings.getByRole('button', { name: 'Note it' }).click();
  await readings.getByRole('button', { name: 'Everything about First bar · 1' }).click();
  const story = page.getByRole('list', { name: 'Everything about it' });
  await expect(story.getByRole('listitem')).toHaveCount(3);
  await expect(page.getByText('Tern profile · Ten · 1.6')).toBeVisible();
  expect(await axeFaults(page)).toEqual([]);
  await press(page, 'Escape');

  // What is hired in says in words that it is overdue, until it is back.
  await page.getByRole('textbox', { name: 'Add a hired item', exact: true }).fill('2 Hazer, Tide Hire, 2020-01-31');
  await press(page, 'Enter');
  await expect(part(technician.page, 'Hired in').getByRole('listitem')).toContainText('overdue');
  await expect(page.getByText('saved', { exact: true })).toBeVisible();
  const text = await (await page.request.get(`/api${path}/sheets/fault-list.csv`)).text();
  expect(text).toContain('Hazer,2,Tide Hire,2020-01-31,overdue');
  await technician.page.getByRole('button', { name: 'Hazer is given back today' }).click();
  await expect(part(page, 'Hired in').getByRole('listitem')).toContainText('returned');
  expect(designer.complaints).toEqual([]);
  expect(technician.complaints).toEqual([]);
});

test('at the unit, with one thumb, a fault is reported in two taps', async ({ browser }) => {
  const desk = await sit(browser, 'designer', DESK);
  const path = await makeRig(desk.page, fresh('Gangway'));
  await bringIn(desk.page, path, LIST);
  const { page, complaints } = await sit(browser, 'technician', PHONE);
  await page.goto(path);
  await page.getByRole('button', { name: /First bar · 2\b/ }).tap();
  await page.getByRole('button', { name: 'Report a fault' }).tap();
  expect(await axeFaults(page)).toEqual([]);
  await page.getByRole('button', { name: 'no light' }).tap();
  await expect(page.getByRole('dialog')).toHaveCount(0);
  await expect(page.getByText('First bar · 2 has a fault: “no light”, seen by Bram Kettle')).toBeVisible();
  await expect(desk.page.getByRole('row').filter({ hasText: '1:40' })).toContainText('“no light”');
  await fitsThumb(page);

  await page.goto(`${path}/upkeep`);
  await expect(page.getByText('1 fault open')).toBeVisible();
  await fitsThumb(page);
  await page.getByRole('button', { name: 'Everything about First bar · 2' }).tap();
  await expect(page.getByRole('list', { name: 'Everything about it' })).toContainText('no light');
  await fitsThumb(page);
  expect(await axeFaults(page)).toEqual([]);
  expect(complaints).toEqual([]);
});
