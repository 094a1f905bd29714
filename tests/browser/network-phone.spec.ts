import { expect, test } from '@playwright/test';
import { axeFaults } from './support/axe-faults.ts';
import { servedScreen } from './support/served-screen.ts';

const served = servedScreen();

test('on a phone universes and devices stand under each other, and nothing runs out at the side', async ({ page }) => {
  await page.goto(`${served.url}?network`);
  const sacn = page.getByRole('textbox', { name: 'Universe 2: sACN', exact: true });
  const ports = page.getByRole('textbox', { name: 'Port 2 of Bridge node: number it listens to', exact: true });
  await expect(ports).toBeVisible();
  await expect(page.getByRole('table')).toHaveCount(0);
  const width = await page.evaluate(() => [document.documentElement.scrollWidth, window.innerWidth]);
  expect(width[0]).toBeLessThanOrEqual(width[1] ?? 0);
  for (const control of await page.locator('main :is(input, select, button)').all()) {
    const box = await control.boundingBox();
    if (box === null) throw new Error('a control is not drawn');
    expect(box.x).toBeGreaterThanOrEqual(0);
    expect(box.x + box.width).toBeLessThanOrEqual(width[1] ?? 0);
    // Source: WCAG 2.1, success criterion 2.5.5.
    expect(box.height).toBeGreaterThanOrEqual(44);
  }
  expect(await axeFaults(page)).toEqual([]);

  await sacn.fill('9');
  await sacn.blur();
  await expect(page.getByText(/^Universe 2 travels as sACN 9, and no port listens to that/)).toBeVisible();
  await page.getByRole('button', { name: 'Undo' }).tap();
  await expect(sacn).toHaveValue('2');
  await page.getByRole('button', { name: 'Fill in deliveries…' }).tap();
  await page.getByRole('textbox', { name: 'Universes', exact: true }).fill('7');
  await expect(page.getByRole('dialog')).toContainText('Universe 7: by sACN · sACN 7 (239.255.0.7)');
  await page.getByRole('button', { name: 'Apply' }).tap();
  await expect(page.getByRole('heading', { name: /^Universe 7, its slots/ })).toBeVisible();
});

test('a reader sees the network and writes nothing', async ({ page }) => {
  await page.goto(`${served.url}?network`);
  await page.evaluate(() => Object(window).link.setStatus({ state: 'read-only', detail: '' }));
  await expect(page.getByText('You are a reader here: the network is shown as it stands.')).toBeVisible();
  for (const control of await page.locator('main :is(input, select)').all()) await expect(control).toBeDisabled();
  await expect(page.getByRole('button')).toHaveCount(0);
});
