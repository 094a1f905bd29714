import { expect, test } from '@playwright/test';
import { type ServedPage, servePage } from '#tests/support/sheet-page/serve-page.ts';

/** The screens of a rig, served by themselves to the tests of one file. A test fails when its page has complained of anything at all. */
export function servedScreen(): { readonly url: string } {
  let served: ServedPage | undefined;
  let complaints: string[] = [];

  test.beforeAll(async () => {
    served = await servePage('tests/support/sheet-page/screen-page.tsx');
  });

  test.afterAll(() => served?.close());

  test.beforeEach(({ page }) => {
    complaints = [];
    page.on('pageerror', (error) => complaints.push(error.message));
    page.on('console', (message) => {
      if (message.type() === 'error' || message.type() === 'warning') complaints.push(message.text());
    });
  });

  test.afterEach(() => expect(complaints).toEqual([]));

  return {
    get url() {
      if (served === undefined) throw new Error('the screen is served once the tests of this file have begun');
      return served.url;
    },
  };
}
