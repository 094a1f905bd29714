import { join } from 'node:path';
import { expect, type Page, test } from '@playwright/test';
import { build } from 'esbuild';
import * as Y from 'yjs';
import type { Copies, PlainBatch } from './support/copy-harness.ts';

let harness = '';
test.beforeAll(async () => {
  const entry = join(import.meta.dirname, 'support/copy-harness.ts');
  const built = await build({ entryPoints: [entry], bundle: true, write: false, format: 'iife', platform: 'browser' });
  harness = built.outputFiles[0]?.text ?? '';
});

/** An empty page of an origin of its own, with the copy in it. */
async function openBlank(page: Page, origin = 'http://localhost:4999'): Promise<void> {
  await page.route(`${origin}/`, (route) => route.fulfill({ contentType: 'text/html', body: '<!doctype html>' }));
  await page.goto(`${origin}/`);
  await page.addScriptTag({ content: harness });
}

const inPage = <Name extends keyof Copies>(
  page: Page,
  name: Name,
  ...parameters: Parameters<Copies[Name]>
): Promise<Awaited<ReturnType<Copies[Name]>>> =>
  page.evaluate(([called, given]) => Reflect.apply(window.copies[called], undefined, given), [
    name,
    parameters,
  ] as const);

// A venue's own network has plain HTTP and names of its own, where a browser grants no secure context.
for (const origin of ['http://localhost:4999', 'http://rig.test:4999'])
  test(`the copy on this device gives back what was written, on ${origin}`, async ({ page }) => {
    await openBlank(page, origin);
    expect(await inPage(page, 'load', 'ann', 'rig1')).toEqual({ known: [], mine: [], seq: 0, clients: [] });
    const batches: PlainBatch[] = [
      { known: [[1], [2]], mine: [[10], [11]], seq: 4, client: 7 },
      { mine: [[12]], client: 8 },
    ];
    const [first, second] = await inPage(page, 'write', 'ann', 'rig1', batches);
    expect([first?.length, second?.length]).toEqual([2, 1]);
    await page.reload();
    await page.addScriptTag({ content: harness });
    const copied = await inPage(page, 'load', 'ann', 'rig1');
    expect(copied).toMatchObject({ known: [[1], [2]], mine: [{ bytes: [10] }, { bytes: [11] }, { bytes: [12] }] });
    expect(copied).toMatchObject({ seq: 4, clients: [7, 8] });
  });

test('an acknowledged edit is known from then on, once, whoever says so', async ({ page }) => {
  await openBlank(page);
  const [keys] = await inPage(page, 'write', 'ann', 'rig1', [{ mine: [[10], [11]] }]);
  const acknowledged = [Number(keys?.[0])];
  await inPage(page, 'write', 'ann', 'rig1', [{ acknowledged, seq: 9 }, { acknowledged }]);
  expect(await inPage(page, 'load', 'ann', 'rig1')).toMatchObject({ known: [[10]], mine: [{ bytes: [11] }], seq: 9 });
});

test('people and rigs are kept apart, and a person can be forgotten', async ({ page }) => {
  await openBlank(page);
  await inPage(page, 'write', 'ann', 'rig1', [{ mine: [[1], [2]] }]);
  await inPage(page, 'write', 'ann', 'rig2', [{ mine: [[3]] }]);
  await inPage(page, 'write', 'bob', 'rig1', [{ mine: [[4]] }]);
  expect(await inPage(page, 'load', 'ann', 'rig2')).toMatchObject({ mine: [{ bytes: [3] }] });
  expect(await inPage(page, 'unsaved', 'ann')).toEqual([
    ['rig1', 2],
    ['rig2', 1],
  ]);
  await inPage(page, 'forget', 'ann');
  expect(await inPage(page, 'unsaved', 'ann')).toEqual([]);
  expect(await inPage(page, 'unsaved', 'bob')).toEqual([['rig1', 1]]);
});

test('rows of others are merged when there are many, and nothing is lost', async ({ page }) => {
  await openBlank(page);
  const doc = new Y.Doc();
  const batches: PlainBatch[] = [];
  doc.on('update', (bytes) => batches.push({ known: [[...bytes]] }));
  for (let nth = 0; nth < 260; nth++) doc.getMap('cells').set(`c${nth % 40}`, nth);
  await inPage(page, 'write', 'ann', 'rig1', batches);
  const copied = await inPage(page, 'load', 'ann', 'rig1');
  if (typeof copied === 'string') throw new Error(copied);
  expect(copied.known.length).toBeLessThan(100);
  const read = new Y.Doc();
  for (const bytes of copied.known) Y.applyUpdate(read, Uint8Array.from(bytes));
  expect(read.getMap('cells').toJSON()).toEqual(doc.getMap('cells').toJSON());
});

test('a browser without storage says so', async ({ page }) => {
  await page.addInitScript(() => Object.defineProperty(window, 'indexedDB', { value: undefined }));
  await openBlank(page);
  expect(await inPage(page, 'load', 'ann', 'rig1')).toBe('missing');
  expect(await inPage(page, 'write', 'ann', 'rig1', [{ mine: [[1]] }])).toEqual(['missing']);
});

test('a full device says so, keeps what it has, and takes more once there is room', async ({ page }) => {
  await openBlank(page);
  const devtools = await page.context().newCDPSession(page);
  await devtools.send('Storage.overrideQuotaForOrigin', { origin: 'http://localhost:4999', quotaSize: 1_000_000 });
  await inPage(page, 'write', 'ann', 'rig1', [{ mine: [[1]] }]);
  expect(await inPage(page, 'writeMany', 'ann', 'rig1', 20_000_000)).toBe('full');
  expect(await inPage(page, 'load', 'ann', 'rig1')).toMatchObject({ mine: [{ bytes: [1] }] });
  await devtools.send('Storage.overrideQuotaForOrigin', { origin: 'http://localhost:4999' });
  expect(await inPage(page, 'write', 'ann', 'rig1', [{ mine: [[2]] }])).toHaveLength(1);
  expect(await inPage(page, 'load', 'ann', 'rig1')).toMatchObject({ mine: [{ bytes: [1] }, { bytes: [2] }] });
});
