import type { Page } from '@playwright/test';

/** Everything a page complains of, from now on. What the browser itself notes of requests that the test cuts off is left out. */
export function watchConsole(page: Page): readonly string[] {
  const complaints: string[] = [];
  page.on('pageerror', (error) => complaints.push(error.message));
  page.on('console', (message) => {
    if (message.type() !== 'error' && message.type() !== 'warning') return;
    if (!/ERR_INTERNET_DISCONNECTED|ERR_CONNECTION|ERR_EMPTY_RESPONSE|WebSocket connection to/.test(message.text()))
      complaints.push(message.text());
  });
  return complaints;
}
