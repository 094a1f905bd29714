import type { Page } from '@playwright/test';

/** Presses keys one after the other. */
export async function press(page: Page, ...keys: readonly string[]): Promise<void> {
  for (const key of keys) await page.keyboard.press(key);
}
