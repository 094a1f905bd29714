import { expect, type Page, test } from '@playwright/test';
import { axeFaults } from './support/axe-faults.ts';
import { enterDemo, fresh } from './support/doors.ts';
import { watchConsole } from './support/watch-console.ts';

const sideways = (page: Page) =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

/** What a thumb hits, in CSS pixels. Source: WCAG 2.1, success criterion 2.5.5. */
const TARGET = 44;

/** What one taps that is smaller; of a box within a label, the label. */
const small = (page: Page) =>
  page.evaluate((target) => {
    const taps = [...document.querySelectorAll('main button, main input, main textarea, main select, main summary')];
    const sizes = taps
      .filter((element) => element.checkVisibility())
      .map((element) => ({
        name: element.textContent || element.getAttribute('aria-label') || element.id,
        height: (element.closest('label') ?? element).getBoundingClientRect().height,
      }));
    return sizes.filter(({ height }) => height > 0 && height < target);
  }, TARGET);

test('on a phone a type is written one row at a time, and no page scrolls sideways', async ({ page }) => {
  const complaints = watchConsole(page);
  await enterDemo(page, 'technician');
  await page.goto('/crews/demo-touring/types');
  await page.getByRole('button', { name: 'Write a new type' }).tap();
  await page.waitForURL('**/drafts/*');
  await page.getByLabel('Maker').fill('Curlew Stage');
  await page.getByLabel('Model').fill(fresh('Dunlin'));
  await page
    .getByLabel('The chart, as copied from the manual')
    .fill('1 Dimmer\n2 Zoom 0-127 Wide\n   128-255 Narrow\n');
  expect(await sideways(page)).toBe(0);
  await page.getByRole('button', { name: 'Take 2 rows' }).tap();
  await expect(page.getByRole('grid')).toHaveCount(0);
  expect(await small(page)).toEqual([]);
  await page
    .getByRole('list', { name: 'Rows' })
    .getByRole('button', { name: /Dimmer/ })
    .tap();
  await page.getByRole('button', { name: 'Confirm the guess' }).tap();
  await expect(page.getByText('Row 2 of 2')).toBeVisible();
  await page.getByLabel('Highlight').fill('255');
  await page.getByRole('button', { name: 'Confirm the guess' }).tap();
  await page.getByRole('button', { name: 'Previous' }).tap();
  await expect(page.getByLabel('Attribute')).toHaveValue('Dimmer');
  await page.getByRole('button', { name: 'Next' }).tap();
  await expect(page.getByLabel('Highlight')).toHaveValue('255');
  await page.getByText('What the manual says of the unit').tap();
  await page.getByLabel('Weight').fill('7.5');
  await page.getByLabel('Hot surfaces').check();
  await expect(page.getByText(/^It gets hot\./)).toBeVisible();
  expect(await sideways(page)).toBe(0);
  expect(await small(page)).toEqual([]);
  expect(await axeFaults(page)).toEqual([]);
  await page.getByRole('button', { name: 'Publish', exact: true }).tap();
  await page.getByRole('dialog').getByRole('button', { name: 'Publish' }).tap();
  await page.waitForURL('**/types/*');
  await expect(page.getByText('7.5 kg')).toBeVisible();
  expect(complaints).toEqual([]);
});
