import { type Browser, expect, type Page, test } from '@playwright/test';
import { type Cable, layCable } from './support/cable.ts';
import { enterDemo, fresh, makeRig } from './support/doors.ts';
import { watchConsole } from './support/watch-console.ts';

/** A person at a browser of their own, on a network cable of their own. */
interface Seat {
  readonly page: Page;
  readonly cable: Cable;
  readonly complaints: readonly string[];
}

const cables: Cable[] = [];

test.afterEach(() => {
  for (const cable of cables.splice(0)) cable.close();
});

async function sit(browser: Browser, as: 'designer' | 'technician', network: Network): Promise<Seat> {
  const cable = await layCable(network.server, network.name);
  cables.push(cable);
  const context = await browser.newContext();
  const page = await context.newPage();
  const complaints = watchConsole(page);
  await enterDemo(page, as, cable.address);
  return { page, cable, complaints };
}

const rowOf = (page: Page, channel: number) =>
  page
    .locator('[role="row"]')
    .filter({ has: page.locator('[data-column="channel"]', { hasText: new RegExp(`^${channel}(\\D|$)`) }) });

const cellOf = (page: Page, channel: number, column: string) =>
  rowOf(page, channel).locator(`[data-column="${column}"]`);

async function write(page: Page, channel: number, column: string, text: string): Promise<void> {
  await cellOf(page, channel, column).click();
  await page.keyboard.type(text);
  await page.keyboard.press('Enter');
}

const saved = (page: Page) => expect(page.getByText('saved', { exact: true })).toBeVisible();

/** Two fixtures of ten slots each that do not touch. */
const LIST = [
  'Channel\tPosition\tUnit\tType\tMode\tFootprint\tAddress',
  '1\tFirst bar\t1\tTern profile\tTen\t10\t1:1',
  '2\tFirst bar\t2\tTern profile\tTen\t10\t1:21',
].join('\n');

interface Network {
  readonly server: string;
  readonly name?: string;
}

async function startRig(browser: Browser, network: Network): Promise<{ designer: Seat; technician: Seat }> {
  const designer = await sit(browser, 'designer', network);
  const path = await makeRig(designer.page, fresh('Two people'));
  await designer.page.getByRole('navigation').getByRole('link', { name: 'Lists in' }).click();
  await designer.page.getByLabel('Or paste the list').fill(LIST);
  await designer.page.getByRole('button', { name: 'Read what I pasted' }).click();
  await designer.page.getByRole('button', { name: 'Bring in 2 fixtures' }).click();
  await designer.page.waitForURL(`**${path}`);
  await saved(designer.page);
  const technician = await sit(browser, 'technician', network);
  await technician.page.goto(`${technician.cable.address}${path}`);
  await expect(cellOf(technician.page, 2, 'address')).toHaveText('1:21');
  return { designer, technician };
}

const here = (page: Page) => expect(page.getByText(/^on this device only/)).toBeVisible();

test('edits cross, both edits of one row stay, a clash shows on both screens and its plan clears it, undo is mine alone', async ({
  browser,
  baseURL,
}) => {
  const { designer, technician } = await startRig(browser, { server: String(baseURL) });
  await write(designer.page, 1, 'purpose', 'Key light');
  await write(technician.page, 1, 'circuit', 'A-7');
  for (const { page } of [designer, technician]) {
    await expect(cellOf(page, 1, 'purpose')).toHaveText('Key light', { timeout: 1000 });
    await expect(cellOf(page, 1, 'circuit')).toHaveText('A-7', { timeout: 1000 });
  }

  await write(technician.page, 2, 'address', '1/6');
  for (const { page } of [designer, technician]) await expect(page.getByText('1 blocker')).toBeVisible();
  await designer.page.getByRole('grid').getByRole('button', { name: /move/i }).first().click();
  await designer.page.getByRole('dialog').getByRole('button', { name: 'Apply' }).click();
  for (const { page } of [designer, technician]) await expect(page.getByText('1 blocker')).toHaveCount(0);

  // The technician takes back only what the technician did: first the address, then the circuit.
  await technician.page.getByRole('grid').focus();
  await technician.page.keyboard.press('Control+z');
  await technician.page.keyboard.press('Control+z');
  await expect(cellOf(technician.page, 1, 'circuit')).toHaveText('');
  await expect(cellOf(designer.page, 1, 'circuit')).toHaveText('');
  await expect(cellOf(technician.page, 1, 'purpose')).toHaveText('Key light');
  expect([...designer.complaints, ...technician.complaints]).toEqual([]);
});

test('each sees the other by name in the cell', async ({ browser, baseURL }) => {
  const { designer, technician } = await startRig(browser, { server: String(baseURL) });
  await cellOf(technician.page, 2, 'unit').click();
  await expect(cellOf(designer.page, 2, 'unit').getByText('Bram Kettle', { exact: true })).toBeVisible();
});

test('each sees the block that the other carries over the ribbons, and both are put', async ({ browser, baseURL }) => {
  const { designer, technician } = await startRig(browser, { server: String(baseURL) });
  for (const { page } of [designer, technician]) {
    await page.getByRole('navigation').getByRole('link', { name: 'Universes' }).click();
    await page.getByRole('button', { name: 'All ribbons' }).click();
  }
  const block = (page: Page, unit: number) =>
    page.getByRole('button', { name: new RegExp(`^First bar · ${unit}, slots`) });
  await block(designer.page, 1).press('m');
  await block(technician.page, 2).press('m');
  await designer.page.keyboard.press('PageDown');
  await technician.page.keyboard.press('Control+ArrowDown');
  await expect(technician.page.getByText('Odile Fenn carries First bar · 1 to 1:11–20')).toBeVisible();
  await expect(designer.page.getByText('Bram Kettle carries First bar · 2 to 2:21–30')).toBeVisible();
  for (const { page } of [designer, technician]) await page.keyboard.press('Enter');
  for (const { page } of [designer, technician]) {
    await expect(page.getByText(/ carries First bar/)).toHaveCount(0);
    await expect(page.getByRole('button', { name: 'First bar · 1, slots 11 to 20' })).toBeVisible();
    await expect(page.getByRole('list', { name: 'Universe 2', exact: true }).getByRole('button')).toHaveCount(1);
  }
});

test('the unit one is at goes along from page to page, and the address names the universe', async ({
  browser,
  baseURL,
}) => {
  const { designer } = await startRig(browser, { server: String(baseURL) });
  const { page } = designer;
  await write(page, 2, 'address', '4:101');
  await cellOf(page, 2, 'purpose').click();
  await page.getByRole('navigation').getByRole('link', { name: 'Universes' }).click();
  const slots = page.getByRole('grid', { name: 'Slots of universe 4' });
  await expect(slots).toBeVisible();
  await page.getByRole('option', { name: /^1\b/ }).click();
  await expect(page).toHaveURL(/#universe-1$/);
  await page.reload();
  await expect(page.getByRole('grid', { name: 'Slots of universe 1' })).toBeVisible();
  await page.getByRole('button', { name: /^First bar · 1, slots/ }).click();
  await page.getByRole('link', { name: 'Its row in the sheet' }).click();
  await expect(cellOf(page, 1, 'unit')).toBeVisible();
  await page.keyboard.press('Home');
  await page.keyboard.type('77');
  await page.keyboard.press('Enter');
  await expect(cellOf(page, 77, 'unit')).toHaveText('1');
});

test('of two values set at once the loser is told, and can put it back', async ({ browser, baseURL }) => {
  const { designer, technician } = await startRig(browser, { server: String(baseURL) });
  for (const { cable } of [designer, technician]) cable.pull();
  await write(designer.page, 1, 'colour', 'straw');
  await write(technician.page, 1, 'colour', 'steel');
  for (const { page } of [designer, technician]) await here(page);
  for (const { cable } of [designer, technician]) cable.plug();
  await expect
    .poll(
      async () => {
        const counts = await Promise.all(
          [designer, technician].map(({ page }) => page.getByRole('button', { name: /put mine back/i }).count()),
        );
        return counts.reduce((sum, count) => sum + count, 0);
      },
      { timeout: 30_000 },
    )
    .toBe(1);
  const loser =
    (await designer.page.getByRole('button', { name: /put mine back/i }).count()) === 1 ? designer : technician;
  await loser.page.getByRole('button', { name: /put mine back/i }).click();
  const mine = loser === designer ? 'straw' : 'steel';
  for (const { page } of [designer, technician]) await expect(cellOf(page, 1, 'colour')).toContainText(mine);
});

test('with the network off one goes on, reloads, and everything merges afterwards', async ({ browser, baseURL }) => {
  const { designer, technician } = await startRig(browser, { server: String(baseURL) });
  // The page is kept on the device once the worker is ready; it answers from the next page load on.
  await technician.page.evaluate(async () => void (await navigator.serviceWorker.ready));
  technician.cable.pull();
  await write(technician.page, 2, 'purpose', 'Back light');
  await here(technician.page);
  await write(designer.page, 2, 'colour', 'rose');
  await technician.page.reload();
  await expect(cellOf(technician.page, 2, 'purpose')).toHaveText('Back light');
  await here(technician.page);
  technician.cable.plug();
  await saved(technician.page);
  for (const { page } of [designer, technician]) {
    await expect(cellOf(page, 2, 'purpose')).toContainText('Back light');
    await expect(cellOf(page, 2, 'colour')).toContainText('rose');
  }
});

test('over plain HTTP under another name two people edit all the same', async ({ browser, baseURL }) => {
  const { designer, technician } = await startRig(browser, { server: String(baseURL), name: 'rig.test' });
  expect(await designer.page.evaluate(() => window.isSecureContext)).toBe(false);
  await write(designer.page, 1, 'purpose', 'Key light');
  await expect(cellOf(technician.page, 1, 'purpose')).toHaveText('Key light');
  await write(technician.page, 2, 'address', '1:3');
  await expect(designer.page.getByText('1 blocker')).toBeVisible();
  technician.cable.pull();
  await write(technician.page, 2, 'colour', 'rose');
  await here(technician.page);
  technician.cable.plug();
  // Behind it may stand who is in the cell.
  await expect(cellOf(designer.page, 2, 'colour')).toHaveText(/^rose/, { timeout: 30_000 });
  expect([...designer.complaints, ...technician.complaints]).toEqual([]);
});
