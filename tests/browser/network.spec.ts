import { readFile } from 'node:fs/promises';
import { type Browser, expect, type Page, test } from '@playwright/test';
import { axeFaults } from './support/axe-faults.ts';
import { enterDemo, fresh, makeRig } from './support/doors.ts';
import { press } from './support/press.ts';
import { watchConsole } from './support/watch-console.ts';

/** Three units in three universes. */
const LIST = [
  'Channel\tPosition\tUnit\tType\tMode\tFootprint\tAddress',
  '1\tFirst bar\t1\tTern profile\tTen\t10\t1:1',
  '2\tFirst bar\t2\tTern profile\tTen\t10\t2:1',
  '3\tSecond bar\t1\tTern profile\tTen\t10\t3:1',
].join('\n');

async function sit(browser: Browser, as: 'designer' | 'technician', base: string) {
  const page = await (await browser.newContext()).newPage();
  const complaints = watchConsole(page);
  await enterDemo(page, as, base);
  return { page, complaints };
}

const toPage = (page: Page, name: string) =>
  page.getByRole('navigation', { name: 'Pages of this rig' }).getByRole('link', { name, exact: true }).click();

async function startRig(page: Page): Promise<string> {
  const path = await makeRig(page, fresh('Network'));
  await toPage(page, 'Lists in');
  await page.getByLabel('Or paste the list').fill(LIST);
  await page.getByRole('button', { name: 'Read what I pasted' }).click();
  await page.getByRole('button', { name: 'Bring in 3 fixtures' }).click();
  await page.waitForURL(`**${path}`);
  await toPage(page, 'Network');
  await expect(page.getByRole('heading', { name: 'Devices' })).toBeVisible();
  return path;
}

async function addNode(page: Page, name: string): Promise<void> {
  await page.getByRole('button', { name: 'Add a node…' }).click();
  await page.getByLabel('Name of the node').fill(name);
  await press(page, 'Enter');
  await expect(page.getByRole('region', { name })).toBeVisible();
}

async function write(page: Page, cell: string, text: string): Promise<void> {
  await page.getByRole('textbox', { name: cell, exact: true }).fill(text);
  await press(page, 'Enter');
}

const cell = (page: Page, name: string) => page.getByLabel(name, { exact: true });
const node = (page: Page, name: string) => page.getByRole('region', { name, exact: true });

test('two people build a network: a node and its ports, deliveries filled in, a port fed twice, the sheet', async ({
  browser,
  baseURL,
}) => {
  const base = String(baseURL);
  const designer = await sit(browser, 'designer', base);
  const path = await startRig(designer.page);
  const technician = await sit(browser, 'technician', base);
  await technician.page.goto(`${base}${path}/network`);
  await expect(technician.page.getByText('3 universes · 0 devices')).toBeVisible();

  await addNode(technician.page, 'Beam');
  await write(technician.page, 'Beam: Network address', '2.0.0.21');
  await expect(cell(designer.page, 'Beam: Network address')).toHaveValue('2.0.0.21');
  await expect(designer.page.getByText(/^Universes 1–3 are in use, and nobody has said how they travel/)).toBeVisible();

  // Art-Net needs the convention of the crew, which is never taken without asking.
  await designer.page.getByRole('button', { name: 'Fill in deliveries…' }).click();
  const dialog = designer.page.getByRole('dialog');
  await dialog.getByLabel('Write the number of the other protocol as well').check();
  await expect(dialog.getByRole('status')).toContainText('Choose a convention first.');
  await expect(dialog.getByRole('button', { name: 'Apply' })).toBeDisabled();
  await press(designer.page, 'Escape');
  await cell(designer.page, 'Convention of numbers').selectOption('plus-one');
  await designer.page.getByRole('button', { name: 'Fill in deliveries…' }).click();
  await dialog.getByLabel('Write the number of the other protocol as well').check();
  await expect(dialog).toContainText('Universe 3: by sACN · sACN 3 (239.255.0.3) · Port-Address 0:0:2 (0x0002)');
  await expect(dialog).toContainText('Clears 1 finding');
  expect(await axeFaults(designer.page)).toEqual([]);
  await dialog.getByRole('button', { name: 'Apply' }).click();
  await expect(cell(technician.page, 'Universe 3: Port-Address')).toHaveValue('0:0:2 (0x0002)');

  await technician.page.getByRole('button', { name: 'Beam: listen to universes…' }).click();
  await expect(technician.page.getByRole('dialog')).toContainText('Port 3 of Beam: sACN 3');
  await technician.page.getByRole('dialog').getByRole('button', { name: 'Apply' }).click();
  await expect(cell(designer.page, 'Port 2 of Beam: number it listens to')).toHaveValue('2');
  await expect(node(designer.page, 'Beam')).toContainText('Universe 3');
  await expect(designer.page.getByText('no port', { exact: true })).toHaveCount(0);

  await write(designer.page, 'Universe 3: sACN', '2');
  const twice =
    'Universes 2, 3 both come out of port 2 of Beam, for they travel as sACN 2. Give each a number of its own';
  await expect(node(technician.page, 'Beam').getByText(twice)).toBeVisible();
  expect(await axeFaults(technician.page)).toEqual([]);
  await toPage(technician.page, 'Sheet');
  await technician.page.getByRole('button', { name: 'Findings' }).click();
  const line = technician.page.getByRole('listitem').filter({ hasText: twice });
  await line.getByRole('link', { name: 'Network' }).click();
  await expect(technician.page).toHaveURL(/\/network$/);

  await toPage(designer.page, 'Sheets out');
  const downloading = designer.page.waitForEvent('download');
  await designer.page.getByRole('link', { name: 'Take out the network sheet' }).click();
  const csv = await readFile(await (await downloading).path(), 'utf8');
  expect(csv).toContain('1,,sACN,1,239.255.0.1,0:0:0 (0x0000),Beam,2.0.0.21,1,,1,10,');
  expect(csv).toContain('blocker');

  await toPage(designer.page, 'Network');
  await cell(designer.page, 'Universe 1: sACN').focus();
  await press(designer.page, 'Control+z');
  await expect(cell(designer.page, 'Universe 3: sACN')).toHaveValue('3');
  await expect(technician.page.getByText(twice)).toHaveCount(0);

  await node(designer.page, 'Beam').getByRole('button', { name: 'Remove Beam…' }).click();
  await designer.page.getByRole('dialog').getByRole('button', { name: 'Remove it' }).click();
  await expect(technician.page.getByText('3 universes · 0 devices')).toBeVisible();
  await designer.page.getByRole('button', { name: 'Undo' }).click();
  await expect(cell(technician.page, 'Port 3 of Beam: number it listens to')).toHaveValue('3');
  expect([...designer.complaints, ...technician.complaints]).toEqual([]);
});

test('a universe leads to its slots and back to how it travels', async ({ page }) => {
  await enterDemo(page, 'technician');
  await startRig(page);
  await page.getByRole('link', { name: 'Universe 2, its slots' }).click();
  await expect(page.getByRole('grid', { name: 'Slots of universe 2' })).toBeVisible();
  await page.getByRole('link', { name: 'How it travels' }).click();
  await expect(page).toHaveURL(/\/network#universe-2$/);
  await expect(page.locator('#universe-2')).toBeFocused();
});
