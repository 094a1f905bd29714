import { readFileSync } from 'node:fs';
import { expect, type Page, test } from '@playwright/test';
import { present } from '#base/assert.ts';
import { type FixtureType, NO_HAZARDS } from '#engine/model/fixture-type.ts';
import { canonicalText } from '#engine/type/content-hash.ts';
import { GENERIC_TYPES } from '#engine/type/generic-types.ts';
import { exportGdtf } from '#exchange/gdtf/export-gdtf.ts';
import { importGdtf } from '#exchange/gdtf/import-gdtf.ts';
import { unpack } from '#server/archive/unpack.ts';
import { axeFaults } from './support/axe-faults.ts';
import { enterDemo, fresh } from './support/doors.ts';
import { watchConsole } from './support/watch-console.ts';

/** An RGBW lamp of an invented maker, made of the generic one: it strobes, and its manual names the values of its dimmer. */
function lamp(model: string): FixtureType {
  const generic = present(
    GENERIC_TYPES.find((type) => type.model === 'RGBW'),
    'no generic RGBW',
  );
  const ranges = [
    { name: 'Blackout', from: 0, physical: null },
    { name: 'Dark to full', from: 8, physical: null },
  ];
  const modes = generic.modes.map((mode) => ({
    ...mode,
    channels: mode.channels.map((channel) =>
      channel.uses[0]?.attribute === 'Dimmer'
        ? {
            ...channel,
            uses: channel.uses.map((use) => ({
              ...use,
              functions: use.functions.map((each) => ({ ...each, ranges })),
            })),
          }
        : channel,
    ),
  }));
  const physical = { ...generic.physical, weight: 7.5, power: 180 };
  return { ...generic, maker: 'Curlew Stage', model, modes, physical, hazards: { ...NO_HAZARDS, strobe: true } };
}

/** The manual's next edition: heavier, and the white slot of its larger mode is amber. */
function secondEdition(type: FixtureType): FixtureType {
  const modes = type.modes.map((mode, at) => ({
    ...mode,
    channels: mode.channels.map((channel) =>
      at === 1 && channel.uses[0]?.attribute === 'ColorAdd_W'
        ? { ...channel, uses: channel.uses.map((use) => ({ ...use, attribute: 'ColorAdd_RY' })) }
        : channel,
    ),
  }));
  return { ...type, modes, physical: { ...type.physical, weight: 8 } };
}

const file = (name: string, bytes: Uint8Array) => ({
  name,
  mimeType: 'application/octet-stream',
  buffer: Buffer.from(bytes),
});
const bringIn = (page: Page, ...files: readonly ReturnType<typeof file>[]) =>
  page
    .getByLabel('Bring in GDTF files')
    .last()
    .setInputFiles([...files]);

/** Lets go of a file over the page's place for files. */
async function drop(page: Page, { name, buffer }: ReturnType<typeof file>): Promise<void> {
  const dataTransfer = await page.evaluateHandle(
    ([name, bytes]) => {
      const data = new DataTransfer();
      data.items.add(new File([Uint8Array.from(bytes)], name));
      return data;
    },
    [name, [...buffer]] as const,
  );
  await page.getByRole('region', { name: 'Bring in GDTF files' }).dispatchEvent('drop', { dataTransfer });
}

async function openLibrary(page: Page): Promise<void> {
  await enterDemo(page, 'designer');
  await page.getByRole('link', { name: 'Saltwind Touring: fixture types' }).click();
  await page.getByRole('combobox', { name: 'Find a type' }).waitFor();
}

const expectClean = async (page: Page) => expect(await axeFaults(page)).toEqual([]);

test('a type comes in as a file, is found by keyboard, grows a revision, and goes out as the file it was', async ({
  page,
}) => {
  const complaints = watchConsole(page);
  const model = fresh('Sandling');
  const first = lamp(model);
  await openLibrary(page);
  await bringIn(page, file('sandling.gdtf', exportGdtf(first)), file('broken.gdtf', Buffer.from('no archive at all')));
  await expect(page.getByText('2 files done.', { exact: true })).toBeVisible();
  const reports = page.getByRole('region', { name: 'What became of the files' });
  await expect(reports.getByText(`Curlew Stage ${model} is in the library now.`)).toBeVisible();
  await expect(reports.getByText('2 modes, 9 channels')).toBeVisible();
  await expect(reports.getByText('The file is not a GDTF file')).toBeVisible();
  await expectClean(page);

  const field = page.getByRole('combobox', { name: 'Find a type' });
  await field.fill(`curlew 5 slots ${model.slice(-6)}`);
  await expect(page.getByRole('option')).toHaveCount(1);
  await field.fill('');
  await field.press('ArrowDown');
  await expect(page.getByRole('option', { selected: true })).toHaveAttribute('aria-posinset', '2');
  await field.fill(model.toUpperCase());
  await field.press('Enter');
  await expect(page.getByRole('heading', { level: 1, name: `Curlew Stage ${model}` })).toBeVisible();

  await expect(page.getByText('Flashing light can bring on seizures.')).toBeVisible();
  await expect(page.getByText('Planning aids only')).toBeVisible();
  await page.getByRole('link', { name: 'Intensity and colours (5 slots)' }).click();
  const chart = page.getByRole('table', { name: 'Intensity and colours' });
  await expect(chart.getByRole('row')).toHaveCount(6);
  await expect(chart.getByRole('row').nth(1)).toContainText('Dimmer');
  await expect(chart.getByRole('row').nth(1)).toContainText('8–255Dark to full');
  await expect(page.getByText('7.5 kg')).toBeVisible();
  await expectClean(page);

  const download = page.waitForEvent('download');
  await page.getByRole('link', { name: 'Save as GDTF' }).click();
  const back = await importGdtf(readFileSync(await (await download).path()), { unpack, nesting: 1 });
  expect(back.ok && canonicalText(back.value.type)).toBe(canonicalText(first));

  await page.getByRole('link', { name: 'All types' }).click();
  await drop(page, file('sandling-2.gdtf', exportGdtf(secondEdition(first))));
  await expect(page.getByText(`Curlew Stage ${model} is in the library as revision 2.`)).toBeVisible();
  await page.getByRole('link', { name: 'Look at it' }).click();
  await expect(page.getByRole('table', { name: 'Revisions' }).getByRole('row')).toHaveCount(3);
  const compared = page.getByRole('region', { name: 'Compare two revisions' });
  await expect(compared.getByText('Weight: 8 kg, before 7.5 kg.')).toBeVisible();
  await expect(compared.getByRole('heading', { name: 'Mode “Intensity and colours”: 1 slot changed' })).toBeVisible();
  await expect(compared.getByRole('row').nth(1)).toContainText('ColorAdd_W,');
  await expect(compared.getByRole('row').nth(1)).toContainText('ColorAdd_RY,');
  await expectClean(page);

  await page.getByRole('button', { name: 'Take it out of the library' }).click();
  await expect(page.getByRole('dialog')).toContainText('Rigs that use it keep their copy');
  await page.getByRole('dialog').getByRole('button', { name: 'Take it out' }).click();
  await expect(page.getByRole('combobox', { name: 'Find a type' })).toBeVisible();
  await page.getByRole('combobox', { name: 'Find a type' }).fill(model);
  await expect(page.getByText(`Nothing is called “${model}”.`)).toBeVisible();
  // The broken file was answered with 422, which the browser notes in its console.
  expect(complaints.filter((line) => !line.includes('422'))).toEqual([]);
});

test('a built-in type can be looked at and saved, not changed', async ({ page }) => {
  await openLibrary(page);
  await page.getByRole('combobox', { name: 'Find a type' }).fill('rgb bar 8');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { level: 1, name: 'Generic RGB bar, 8 cells' })).toBeVisible();
  await expect(page.getByRole('table', { name: 'Cells' }).getByRole('row')).toHaveCount(25);
  await expect(page.getByText('It comes with the program and stays as it is.')).toBeVisible();
  await expect(page.getByRole('button', { name: 'Change it' })).toHaveCount(0);
  await expect(page.getByRole('button', { name: 'Take it out of the library' })).toHaveCount(0);
  await expect(page.getByText('No rig of the crew uses it.')).toBeVisible();
  await expect(page.getByRole('link', { name: 'Save as GDTF' })).toBeVisible();
});

test('a draft that is begun stands in the library until it is published', async ({ page }) => {
  await openLibrary(page);
  const library = page.url();
  await page.getByRole('button', { name: 'Write a new type' }).click();
  await page.waitForURL('**/drafts/*');
  const draft = new URL(page.url()).pathname;
  await page.goto(library);
  const begun = page.getByRole('region', { name: 'Being written' });
  await expect(begun.locator(`a[href="${draft}"]`)).toHaveText('A new type, without a name yet');
});

test('a reader looks at the library and changes nothing', async ({ page }) => {
  await enterDemo(page, 'designer');
  await page.getByRole('link', { name: 'Millrace house crew: fixture types' }).click();
  await expect(page.getByText('You are a reader in this crew')).toBeVisible();
  await expect(page.getByRole('option').first()).toBeVisible();
  await expect(page.getByText('Bring in GDTF files')).toHaveCount(0);
  await expect(page.getByRole('button', { name: 'Write a new type' })).toHaveCount(0);
  await page.getByRole('option').first().click();
  await expect(page.getByRole('link', { name: 'Save as GDTF' })).toBeVisible();
  await expect(page.getByRole('main').getByRole('button')).toHaveCount(0);
});
