import { expect, test } from '@playwright/test';
import { axeFaults } from './support/axe-faults.ts';
import { enterDemo } from './support/doors.ts';

/** What a thumb hits, in CSS pixels. Source: WCAG 2.1, success criterion 2.5.5. */
const TARGET = 44;

test.use({ colorScheme: 'dark' });

test('a type is found and its chart read on a phone, in the dark, without scrolling sideways', async ({ page }) => {
  await enterDemo(page, 'designer');
  await page.getByRole('link', { name: 'Saltwind Touring: fixture types' }).tap();
  const options = page.getByRole('option');
  await options.first().waitFor();
  expect(await axeFaults(page)).toEqual([]);
  await page.getByRole('combobox', { name: 'Find a type' }).fill('scroller');
  const wanted = page.getByRole('option', { name: /Dimmer with scroller/ });
  expect((await wanted.boundingBox())?.height).toBeGreaterThanOrEqual(TARGET);
  await wanted.tap();
  await expect(page.getByRole('table', { name: 'Dimmer and scroller, Break 2' })).toContainText('Color1');
  await expect(page.getByText('It moves without warning.')).toBeVisible();
  const [wide, room] = await page.evaluate(() => [document.documentElement.scrollWidth, window.innerWidth]);
  expect(wide).toBeLessThanOrEqual(room ?? 0);
  expect(await axeFaults(page)).toEqual([]);
});
