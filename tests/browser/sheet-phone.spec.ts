import { expect, test } from '@playwright/test';
import { axeFaults } from './support/axe-faults.ts';
import { servedScreen } from './support/served-screen.ts';

/** What a thumb hits, in CSS pixels. Source: WCAG 2.1, success criterion 2.5.5. */
const TARGET = 44;

const served = servedScreen();

test('one unit at a time: find it, read it, change it, go on to the next', async ({ page }) => {
  test.setTimeout(240_000);
  await page.goto(served.url);
  await expect(page.getByRole('grid')).toHaveCount(0);
  await page.getByRole('button', { name: '2 blockers' }).tap();
  await expect(page.getByRole('heading', { name: 'Bar 1 · 4' })).toBeVisible();
  await expect(page.getByText('347', { exact: true })).toBeVisible();
  await page.getByRole('button', { name: 'Next' }).tap();
  await expect(page.getByRole('heading', { name: 'Bar 1 · 5' })).toBeVisible();
  await page.getByRole('textbox', { name: 'Address', exact: true }).fill('1.369');
  await page.getByRole('textbox', { name: 'Address', exact: true }).press('Enter');
  await expect(page.getByText('369', { exact: true })).toBeVisible();
  await expect(page.getByRole('button', { name: '1 blocker' })).toBeVisible();
  expect(await axeFaults(page)).toEqual([]);
  await page.getByRole('button', { name: 'List' }).tap();
  await expect(page.getByRole('button', { name: /Bar 1 · 5/ })).toBeVisible();
});

test('everything one taps is as large as a thumb', async ({ page }) => {
  await page.goto(served.url);
  await page.getByRole('button', { name: /Front bridge · 1\b/ }).tap();
  const small = await page.evaluate((target) => {
    const taps = [...document.querySelectorAll('button, input, select, summary')].filter((element) =>
      element.checkVisibility(),
    );
    const sizes = taps.map((element) => ({
      name: element.textContent || element.getAttribute('aria-label'),
      height: element.getBoundingClientRect().height,
    }));
    return sizes.filter(({ height }) => height > 0 && height < target);
  }, TARGET);
  expect(small).toEqual([]);
});
