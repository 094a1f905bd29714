import { expect, type Page, test } from '@playwright/test';
import { axeFaults } from './support/axe-faults.ts';
import { fresh, makeRig } from './support/doors.ts';
import { press } from './support/press.ts';
import { bringIn, DESK, fitsThumb, PHONE, sit } from './support/sit.ts';

const LIST = [
  'Channel\tPosition\tUnit\tType\tMode\tFootprint\tAddress',
  ...[1, 2, 3].map((unit) => `${unit}\tFirst bar\t${unit}\tTern profile\tTen\t10\t1:${unit * 20}`),
  '4\tSecond bar\t1\tTern profile\tTen\t10\t2:1',
];

const cell = (page: Page, name: string) => page.getByRole('textbox', { name, exact: true });

async function write(page: Page, name: string, text: string): Promise<void> {
  await cell(page, name).fill(text);
  await press(page, 'Enter');
}

async function add(page: Page, what: string, line: string): Promise<void> {
  await page.getByRole('textbox', { name: what, exact: true }).fill(line);
  await press(page, 'Enter');
}

test('two people write down a house at once, and the tech pack has what they wrote', async ({ browser }) => {
  const designer = await sit(browser, 'designer', DESK);
  const { page } = designer;
  const path = await makeRig(page, fresh('Record'));
  await bringIn(page, path, LIST);
  await page.getByRole('link', { name: 'House', exact: true }).click();
  await write(page, 'Name of the house', 'The Kettle');
  await write(page, 'Way in for lorries and cases of the house', 'Dock door, 3.2 m high');
  await write(page, 'Stage width in m of the house', '12,5');
  await expect(cell(page, 'Stage width in m of the house')).toHaveValue('12.5');
  await expect(page.getByRole('listitem', { name: 'First bar' })).toContainText('3 units');
  // No weight is ever proposed.
  await expect(cell(page, 'Limit in kg of First bar')).toHaveValue('');
  await expect(cell(page, 'Limit in kg of First bar')).toHaveAttribute('placeholder', 'not stated');

  // Both at once, of the same position and of two.
  const technician = await sit(browser, 'technician', DESK);
  await technician.page.goto(`${path}/house`);
  await expect(cell(technician.page, 'Name of the house')).toHaveValue('The Kettle');
  await Promise.all([
    write(page, 'Trim in m of First bar', '7.2'),
    write(technician.page, 'Notes of First bar', 'in the way of the cyc'),
  ]);
  await page.getByLabel('Numbers run of First bar').selectOption({ label: 'from stage left' });
  await write(technician.page, 'Limit in kg of First bar', '250');
  await write(technician.page, 'Stated by of First bar', 'Ona Reeve');
  await write(technician.page, 'On of First bar', '2026-11-02');
  for (const each of [page, technician.page]) {
    await expect(cell(each, 'Trim in m of First bar')).toHaveValue('7.2');
    await expect(cell(each, 'Notes of First bar')).toHaveValue('in the way of the cyc');
    await expect(cell(each, 'Limit in kg of First bar')).toHaveValue('250');
    await expect(each.getByLabel('Numbers run of First bar')).toHaveValue('stage-left-first');
    await expect(cell(each, 'Limit in kg of Second bar')).toHaveValue('');
  }

  // One typed line each; what cannot be is said where it was typed.
  await add(page, 'Add a position', 'Pit');
  await add(page, 'Add an outlet', 'FOH 3, First bar, network, rack 2');
  await add(page, 'Add an outlet', 'foh 3');
  await expect(page.getByRole('alert').filter({ hasText: 'is there already' })).toBeVisible();
  await add(page, 'Add a spare', '2 tern, Ten, crate 4');
  await add(page, 'Add a contact', 'Ona Reeve, rigger, 0100 2000, ona@kettle.invalid');
  await add(page, 'Add a note', 'No fog after ten');
  await expect(cell(technician.page, 'Position of FOH 3')).toHaveValue('First bar');
  await expect(cell(technician.page, 'Type of Tern profile')).toHaveValue('Tern profile');
  await expect(cell(technician.page, 'Number of Tern profile')).toHaveValue('2');
  await expect(cell(technician.page, 'Phone of Ona Reeve')).toHaveValue('0100 2000');
  await expect(technician.page.getByRole('link', { name: 'Call Ona Reeve' })).toHaveAttribute('href', 'tel:01002000');
  await write(page, 'Outlet of FOH 3', 'FOH 4');
  await expect(cell(technician.page, 'Position of FOH 4')).toHaveValue('First bar');

  // What is taken away comes back.
  await page.getByRole('button', { name: 'Remove Ona Reeve' }).click();
  await expect(cell(technician.page, 'Phone of Ona Reeve')).toHaveCount(0);
  await page.getByRole('button', { name: 'Undo', exact: true }).click();
  await expect(cell(technician.page, 'Phone of Ona Reeve')).toHaveValue('0100 2000');
  expect(await axeFaults(page)).toEqual([]);
  await page.emulateMedia({ colorScheme: 'dark' });
  expect(await axeFaults(page)).toEqual([]);
  await page.emulateMedia({ colorScheme: 'light' });
  for (const each of [page, technician.page]) await expect(each.getByText('saved', { exact: true })).toBeVisible();

  const text = await (await page.request.get(`/api${path}/sheets/tech-pack.csv`)).text();
  expect(text).toContain('Stage width in m,12.5');
  expect(text).toMatch(/First bar,from stage left,7\.2,3,,3,0,250,Ona Reeve,2026-11-02,in the way of the cyc/);
  expect(text).toMatch(/Second bar,.*nobody has stated it/);
  expect(text).toContain('Tern profile,Ten,2,crate 4');
  expect(text).toContain('competent rigger has the last word');

  // On paper it stands alone.
  await page.evaluate(() => {
    window.print = () => undefined;
  });
  await page.getByRole('button', { name: 'Print the tech pack' }).click();
  await page.emulateMedia({ media: 'print' });
  await expect(page.getByRole('heading', { name: 'Tech pack', level: 1 })).toBeVisible();
  await expect(page.getByRole('heading', { name: 'Standing units by position and type' })).toBeVisible();
  await expect(page.getByRole('cell', { name: 'Ona Reeve' }).first()).toBeVisible();
  await expect(page.getByRole('textbox', { name: 'Name of the house' })).toBeHidden();
  expect(designer.complaints).toEqual([]);
  expect(technician.complaints).toEqual([]);
});

test('the record is read and written on a phone', async ({ browser }) => {
  const { page, complaints } = await sit(browser, 'technician', PHONE);
  const path = await makeRig(page, fresh('Pocket record'));
  await page.goto(`${path}/house`);
  await add(page, 'Add a position', 'First bar');
  await write(page, 'Trim in m of First bar', '7.2');
  await add(page, 'Add a contact', 'Ona Reeve, rigger, 0100 2000');
  await page.getByRole('navigation', { name: 'Parts of this page' }).getByRole('link', { name: 'Contacts' }).tap();
  await expect(page.getByRole('heading', { name: 'Contacts' })).toBeInViewport();
  await expect(cell(page, 'Role of Ona Reeve')).toHaveValue('rigger');
  await fitsThumb(page);
  expect(await axeFaults(page)).toEqual([]);
  expect(complaints).toEqual([]);
});
