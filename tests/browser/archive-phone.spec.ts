import { expect, test } from '@playwright/test';
import { axeFaults } from './support/axe-faults.ts';
import { enterDemo, fresh } from './support/doors.ts';

/** What a thumb hits, in CSS pixels. Source: WCAG 2.1, success criterion 2.5.5. */
const TARGET = 44;

test.use({ colorScheme: 'dark' });

test('a rig is removed and brought back, and the audit read, on a phone in the dark, without scrolling sideways', async ({
  page,
}) => {
  const rig = fresh('Pocket');
  await enterDemo(page, 'technician');
  await page.getByRole('button', { name: 'Start a crew' }).tap();
  await page.getByLabel('Name of the crew').fill(rig);
  await page.getByLabel('Name of the crew').press('Enter');
  await page.getByRole('button', { name: 'Make a rig' }).tap();
  await page.getByRole('dialog').getByLabel('Crew').selectOption({ label: rig });
  await page.getByLabel('Name of the rig').fill(rig);
  await page.getByLabel('Name of the rig').press('Enter');
  await page.waitForURL('**/rigs/*');
  await page.goto('/');
  await page.getByRole('link', { name: `${rig}: members and venues` }).tap();
  await page.getByRole('button', { name: `Remove ${rig}` }).tap();
  await page.getByRole('dialog').getByRole('textbox').fill(rig);
  await page.getByRole('dialog').getByRole('button', { name: 'Remove', exact: true }).tap();
  const back = page.getByRole('button', { name: `Bring back ${rig}` });
  await back.waitFor();
  for (const target of [
    back,
    page.getByRole('button', { name: `Destroy now… ${rig}` }),
    page.getByRole('link', { name: 'Take everything out' }),
  ])
    expect((await target.boundingBox())?.height).toBeGreaterThanOrEqual(TARGET);
  expect(await axeFaults(page)).toEqual([]);
  const sideways = () => page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
  expect(await sideways()).toBeLessThanOrEqual(0);
  await back.tap();
  await page.getByRole('button', { name: `Rename ${rig}` }).waitFor();
  await page.getByRole('link', { name: 'Open the audit' }).tap();
  await expect(page.getByRole('listitem')).toHaveCount(4);
  await expect(page.getByRole('listitem').first()).toContainText('Brought back the rig');
  expect(await sideways()).toBeLessThanOrEqual(0);
  expect(await axeFaults(page)).toEqual([]);
});
