import { expect, test } from '@playwright/test';
import { axeFaults } from './support/axe-faults.ts';
import { servedScreen } from './support/served-screen.ts';

/** What a thumb hits, in CSS pixels. Source: WCAG 2.1, success criterion 2.5.5. */
const TARGET = 44;

const served = servedScreen();

test.use({ colorScheme: 'dark' });

test('loads are read on a phone, in the dark, without scrolling sideways', async ({ page }) => {
  await page.goto(served.url);
  await page.getByText('Tools of the sheet').tap();
  await page.getByRole('toolbar').getByRole('button', { name: 'Loads', exact: true }).tap();
  const panel = page.locator('section:has(> div > h2)');
  await expect(panel.getByRole('heading', { name: 'FB-1' })).toBeAttached();
  expect(await axeFaults(page)).toEqual([]);
  expect((await page.getByLabel('Nominal voltage').boundingBox())?.height).toBeGreaterThanOrEqual(TARGET);
  const [wide, room] = await page.evaluate(() => [document.documentElement.scrollWidth, window.innerWidth]);
  expect(wide).toBeLessThanOrEqual(room ?? 0);
});
