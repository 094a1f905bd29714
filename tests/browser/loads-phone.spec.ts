import AxeBuilder from '@axe-core/playwright';
import { expect, test } from '@playwright/test';
import { type ServedPage, servePage } from '#tests/support/sheet-page/serve-page.ts';

/** What a thumb hits, in CSS pixels. Source: WCAG 2.1, success criterion 2.5.5. */
const TARGET = 44;

let served: ServedPage;

test.use({ colorScheme: 'dark' });

test.beforeAll(async () => {
  served = await servePage('tests/support/sheet-page/screen-page.tsx');
});

test.afterAll(() => served.close());

test('loads are read on a phone, in the dark, without scrolling sideways', async ({ page }) => {
  await page.goto(served.url);
  await page.getByText('Tools of the sheet').tap();
  await page.getByRole('toolbar').getByRole('button', { name: 'Loads', exact: true }).tap();
  const panel = page.locator('section:has(> div > h2)');
  await expect(panel.getByRole('heading', { name: 'FB-1' })).toBeAttached();
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(
    violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 160)).join(' | ')}`),
  ).toEqual([]);
  expect((await page.getByLabel('Nominal voltage').boundingBox())?.height).toBeGreaterThanOrEqual(TARGET);
  const [wide, room] = await page.evaluate(() => [document.documentElement.scrollWidth, window.innerWidth]);
  expect(wide).toBeLessThanOrEqual(room ?? 0);
});
