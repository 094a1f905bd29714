import { readFile } from 'node:fs/promises';
import { expect, type Page, test } from '@playwright/test';
import { jsonOf, lastingUpToIds } from '#tests/support/crew-archive.ts';
import { axeFaults } from './support/axe-faults.ts';
import { enterDemo, fresh, makeRig } from './support/doors.ts';
import { watchConsole } from './support/watch-console.ts';

const CREW = 'Saltwind Touring';
const openCrew = async (page: Page, crew = CREW): Promise<void> => {
  await page.goto('/');
  await page
    .getByRole('link', { name: `${crew}: members and venues` })
    .first()
    .click();
  await page.getByRole('heading', { name: crew, level: 1 }).waitFor();
};
const takeOut = async (page: Page): Promise<{ readonly name: string; readonly bytes: Buffer }> => {
  const coming = page.waitForEvent('download');
  await page.getByRole('link', { name: 'Take everything out' }).click();
  const download = await coming;
  return { name: download.suggestedFilename(), bytes: await readFile(await download.path()) };
};

test('a rig is removed by typing its name, brought back with what was in it, and destroyed', async ({ page }) => {
  const complaints = watchConsole(page);
  const rig = fresh('Passing');
  await enterDemo(page, 'designer');
  await makeRig(page, rig);
  await openCrew(page);
  const dialog = page.getByRole('dialog');
  await page.getByRole('button', { name: `Remove ${rig}` }).click();
  expect(await axeFaults(page)).toEqual([]);
  await dialog.getByRole('button', { name: 'Remove', exact: true }).click();
  await expect(dialog.getByText('This is not its name yet.')).toBeVisible();
  await dialog.getByRole('textbox').fill(rig);
  await page.keyboard.press('Enter');
  await expect(page.getByRole('button', { name: `Rename ${rig}` })).toHaveCount(0);
  const removed = page.getByRole('listitem').filter({ hasText: rig });
  await expect(removed).toContainText('removed by');
  await expect(removed).toContainText('can be brought back until');

  await page.getByRole('button', { name: `Bring back ${rig}` }).click();
  await page.getByRole('link', { name: rig }).click();
  await page.getByRole('heading', { name: rig, level: 1 }).waitFor();

  await openCrew(page);
  await page.getByRole('button', { name: `Remove ${rig}` }).click();
  await dialog.getByRole('textbox').fill(rig);
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: `Destroy now… ${rig}` }).click();
  expect(await axeFaults(page)).toEqual([]);
  await dialog.getByRole('textbox').fill(rig);
  await dialog.getByRole('button', { name: 'Destroy it' }).click();
  await expect(page.getByText(rig)).toHaveCount(0);

  await page.getByRole('link', { name: 'Open the audit' }).click();
  const lines = page.getByRole('listitem');
  await expect(lines.filter({ hasText: rig })).toHaveCount(5);
  await expect(lines.filter({ hasText: rig }).first()).toContainText(`Destroyed the rig “${rig}”`);
  expect(await axeFaults(page)).toEqual([]);
  await page.getByLabel('What', { exact: true }).selectOption({ label: 'Rig brought back' });
  await expect(lines.filter({ hasText: rig })).toHaveCount(1);
  await expect(lines.filter({ hasText: rig })).toContainText(`Brought back the rig “${rig}”.`);
  expect(complaints).toEqual([]);
});

test('everything of a crew is taken out, and brought in as a crew of its own by somebody else', async ({
  page,
  browser,
}) => {
  await enterDemo(page, 'designer');
  await openCrew(page);
  const { name, bytes } = await takeOut(page);
  expect(name).toMatch(/^Saltwind Touring \d{4}-\d\d-\d\d\.zip$/);
  expect(jsonOf(bytes, 'manifest.json').crew.name).toBe(CREW);

  const context = await browser.newContext();
  const other = await context.newPage();
  await other.goto('/sign-up');
  await other.getByLabel('Name').fill('Ida Quill');
  await other.getByLabel('E-mail').fill(`${fresh('ida').replace(' ', '.')}@crew.example`);
  await other.getByLabel('Password').fill('a password of some length');
  await other.getByLabel('Password').press('Enter');
  await other.getByRole('heading', { name: 'Your rigs' }).waitFor();
  await other.getByRole('button', { name: 'Bring in an archive…' }).click();
  const dialog = other.getByRole('dialog');
  const choose = (buffer: Buffer) =>
    dialog.getByLabel('Archive, a .zip file').setInputFiles({ name, mimeType: 'application/zip', buffer });
  await dialog.getByRole('button', { name: 'Bring it in' }).click();
  await expect(dialog.getByText('No file is chosen. Choose one.')).toBeVisible();
  expect(await axeFaults(other)).toEqual([]);
  await choose(bytes.subarray(0, bytes.length >> 1));
  await dialog.getByRole('button', { name: 'Bring it in' }).click();
  await expect(dialog.getByText('Nothing was brought in.')).toBeVisible();
  await choose(bytes);
  await dialog.getByRole('button', { name: 'Bring it in' }).click();
  await expect(dialog.getByText(`${CREW} is here`)).toBeVisible();
  await dialog.getByRole('link', { name: 'To the crew' }).click();
  await other.getByRole('heading', { name: CREW, level: 1 }).waitFor();
  await expect(other.getByRole('table', { name: 'Members' }).getByRole('row')).toHaveCount(2);
  const again = await takeOut(other);
  expect(lastingUpToIds(again.bytes)).toEqual(lastingUpToIds(bytes));
  await other.getByRole('link', { name: 'Lantern Tide' }).click();
  await other.getByRole('heading', { name: 'Lantern Tide', level: 1 }).waitFor();
  await expect(other.getByRole('row').nth(3)).toBeVisible();
  await context.close();
});
