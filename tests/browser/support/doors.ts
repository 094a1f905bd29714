import type { Page } from '@playwright/test';
import { randomId } from '#base/random-id.ts';

/** Goes in as one of the demo's people. */
export async function enterDemo(page: Page, as: 'designer' | 'technician', base = ''): Promise<void> {
  await page.goto(`${base}/`);
  await page.getByRole('button', { name: `Look around as the ${as}` }).click();
  await page.getByRole('heading', { name: 'Your rigs' }).waitFor();
}

/** Makes an empty show rig from the front page, for the demo's touring crew, and opens it; answers its path. */
export async function makeRig(page: Page, name: string): Promise<string> {
  await page.getByRole('button', { name: 'Make a rig' }).click();
  await page.getByRole('dialog').getByLabel('Crew').selectOption({ label: 'Saltwind Touring' });
  await page.getByLabel('Name of the rig').fill(name);
  await page.getByLabel('Name of the rig').press('Enter');
  await page.waitForURL('**/rigs/*');
  await page.getByRole('heading', { name, level: 1 }).waitFor();
  return new URL(page.url()).pathname;
}

/** A name that no other test uses. */
export const fresh = (what: string) => `${what} ${randomId()}`;
