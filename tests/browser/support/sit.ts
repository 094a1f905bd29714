import { type Browser, expect, type Page } from '@playwright/test';
import { enterDemo } from './doors.ts';
import { watchConsole } from './watch-console.ts';

export const DESK = { width: 1440, height: 900 };
export const PHONE = { width: 390, height: 844 };

/** What a thumb hits, in CSS pixels. Source: WCAG 2.1, success criterion 2.5.5. */
const TARGET = 44;

/** One of the demo's people at a screen of their own. */
export async function sit(browser: Browser, as: 'designer' | 'technician', size: { width: number; height: number }) {
  const context = await browser.newContext({ viewport: size, hasTouch: size.width < 500, isMobile: size.width < 500 });
  const page = await context.newPage();
  const complaints = watchConsole(page);
  await enterDemo(page, as);
  return { page, complaints };
}

/** Brings a pasted list into the rig that is open, and comes back to its sheet. */
export async function bringIn(page: Page, path: string, list: readonly string[]): Promise<void> {
  await page.getByRole('navigation', { name: 'Pages of this rig' }).getByRole('link', { name: 'Lists in' }).click();
  await page.getByLabel('Or paste the list').fill(list.join('\n'));
  await page.getByRole('button', { name: 'Read what I pasted' }).click();
  await page.getByRole('button', { name: `Bring in ${list.length - 1} fixtures` }).click();
  await page.waitForURL(`**${path}`);
}

/** Nothing runs out at the side, and what one taps within `main` is as large as a thumb. */
export async function fitsThumb(page: Page): Promise<void> {
  const wide = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
  expect(wide).toBeLessThanOrEqual(0);
  const small = await page.evaluate((target) => {
    const taps = [...document.querySelectorAll('main :is(button, select, input:not([type=checkbox]), summary)')];
    const sizes = taps
      .filter((element) => element.checkVisibility())
      .map((element) => ({
        name: element.textContent || element.getAttribute('aria-label'),
        height: element.getBoundingClientRect().height,
      }));
    return sizes.filter(({ height }) => height > 0 && height < target);
  }, TARGET);
  expect(small).toEqual([]);
}
