import { expect, test } from '@playwright/test';
import { axeFaults } from './support/axe-faults.ts';
import { enterDemo, fresh, makeRig } from './support/doors.ts';
import { watchConsole } from './support/watch-console.ts';

test('the front page says what the tool is for, and lets one look around in a click', async ({ page }) => {
  const complaints = watchConsole(page);
  await page.goto('/');
  await expect(page).toHaveTitle('Rigledger');
  await expect(page.getByText('The live, checked patch of a lighting rig.')).toBeVisible();
  expect(await axeFaults(page)).toEqual([]);
  await page.getByRole('button', { name: 'Look around as the technician' }).click();
  await expect(page.getByRole('button', { name: 'Bram Kettle' })).toBeVisible();
  await expect(page.getByRole('link', { name: 'The Lantern Tide' })).toBeVisible();
  expect(await axeFaults(page)).toEqual([]);
  expect(complaints).toEqual([]);
});

test('an invitation waits while a new person makes an account, lets them in as what it says, and is then used up', async ({
  browser,
  page,
}) => {
  const complaints = watchConsole(page);
  await enterDemo(page, 'designer');
  const crew = fresh('Crew');
  await page.getByRole('button', { name: 'Start a crew' }).click();
  await page.getByLabel('Name of the crew').fill(crew);
  await page.keyboard.press('Enter');
  await page.getByRole('link', { name: `${crew}: members and venues` }).click();
  await expect(page.getByRole('heading', { level: 1, name: crew })).toBeVisible();
  expect(await axeFaults(page)).toEqual([]);
  await page.getByRole('button', { name: 'Make an invitation link' }).click();
  await page.getByLabel('What they will be').selectOption('reader');
  await page.getByRole('button', { name: 'Make the link' }).click();
  const link = await page.getByRole('textbox', { name: 'Invitation link' }).inputValue();
  await page.getByRole('button', { name: 'Copy the link' }).click();
  await expect(page.getByText('Copied.')).toBeVisible();

  const guest = await (await browser.newContext()).newPage();
  const guestComplaints = watchConsole(guest);
  await guest.goto(link);
  await expect(guest.getByText(`${crew} invites you as reader.`)).toBeVisible();
  await guest.getByRole('link', { name: 'Make an account' }).click();
  await guest.getByLabel('Your name').fill('Nia Holt');
  await guest.getByLabel('E-mail').fill(`${fresh('nia').replace(' ', '')}@demo.invalid`);
  await guest.getByLabel('Password').fill('four plain words');
  await guest.keyboard.press('Enter');
  await guest.getByRole('button', { name: `Join ${crew}` }).click();
  await expect(guest.getByRole('heading', { level: 1, name: crew })).toBeVisible();
  await expect(guest.getByText('you are reader · 2 members')).toBeVisible();
  await expect(guest.getByRole('button', { name: 'Make an invitation link' })).toHaveCount(0);
  await guest.goto(link);
  await expect(guest.getByRole('alert').filter({ hasText: 'used already' })).toBeVisible();
  expect([...complaints, ...guestComplaints]).toEqual([]);
});

test('a wrong password is refused with a sentence, and a foreign address in the return path is not followed', async ({
  page,
}) => {
  await page.goto('/sign-in?then=https%3A%2F%2Felsewhere.invalid%2F');
  await page.getByLabel('E-mail').fill('nobody@demo.invalid');
  await page.getByLabel('Password').fill('four plain words');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('alert').filter({ hasText: 'do not belong together' })).toBeVisible();
  await expect(page.getByRole('link', { name: 'Make one' })).toHaveAttribute('href', '/sign-up');
});

test('a dialog takes the focus, gives it back on Escape, and the theme holds over a reload', async ({ page }) => {
  await enterDemo(page, 'designer');
  const account = page.getByRole('button', { name: 'Odile Fenn' });
  await account.focus();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('dialog', { name: 'Account' })).toBeVisible();
  await page.getByLabel('Day or dark').selectOption('dark');
  expect(await axeFaults(page)).toEqual([]);
  await page.keyboard.press('Escape');
  await expect(account).toBeFocused();
  await page.reload();
  // The dark paper of theme.css.
  await expect(page.locator('html')).toHaveCSS('background-color', 'rgb(16, 13, 10)');
  expect(await axeFaults(page)).toEqual([]);
});

test('a rig that is not mine answers as one that does not exist', async ({ page }) => {
  await enterDemo(page, 'designer');
  const path = await makeRig(page, fresh('Mine'));
  await page.getByRole('button', { name: 'Odile Fenn' }).click();
  await page.getByRole('button', { name: 'Sign out' }).click();
  await page.getByRole('link', { name: 'Make an account' }).click();
  await page.getByLabel('Your name').fill('Stranger');
  await page.getByLabel('E-mail').fill(`${fresh('stranger').replace(' ', '')}@demo.invalid`);
  await page.getByLabel('Password').fill('four plain words');
  await page.keyboard.press('Enter');
  await page.getByText('You are in no crew yet.').waitFor();
  const said = async (address: string) => {
    await page.goto(address);
    return page.getByRole('alert').filter({ hasText: 'no such rig' }).textContent();
  };
  expect(await said(path)).toBe(await said('/rigs/neverwas'));
});

test('over plain HTTP under another name the page says what is missing, and the doors work', async ({
  page,
  baseURL,
}) => {
  const complaints = watchConsole(page);
  const base = (baseURL ?? '').replace('localhost', 'rig.test');
  await enterDemo(page, 'designer', base);
  expect(await page.evaluate(() => window.isSecureContext)).toBe(false);
  await expect(page.getByText('This page came over plain HTTP.')).toBeVisible();
  await makeRig(page, fresh('Plain'));
  await expect(page.getByText('saved', { exact: true })).toBeVisible();
  expect(complaints).toEqual([]);
});
