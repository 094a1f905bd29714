import * as Y from 'yjs';
import { rowsOf, tableOf } from '#base/table.ts';
import { readRig } from '#document/read/rig-reader.ts';
import { createChecker } from '#engine/check/checker.ts';
import { FIELDS } from '#engine/model/field.ts';
import { cellsOf, readFixture } from '#engine/model/read-fixture.ts';
import type { Rig } from '#engine/model/rig.ts';
import type { Outcome } from './frame/bench.ts';
import { largeRig } from './frame/large-rig.ts';
import { measure, percentile, spellTime } from './frame/measure.ts';
import { documentOf, heapInUse } from './frame/rig-document.ts';

export const name = 'open';
export const bar =
  '<=8x JSON.parse of the same rows, <=80 MB heap, 50,000 fixtures x 12 fields, stored bytes to rig with findings';

const HEAP_BAR = 80;

export function run({ smoke }: { readonly smoke: boolean }): Outcome {
  const rig = fullRig(smoke ? 500 : 50_000);
  const rows = [...rowsOf(rig.fixtures)].map((row) => ({ id: row.id, ...cellsOf(row) }));
  const fewest = Math.min(...rows.map((row) => Object.keys(row).length));
  if (fewest < 12) throw new Error(`a row has ${fewest} fields`);
  const bytes = Y.encodeStateAsUpdate(documentOf(rig));
  const wanted = createChecker(rig);
  const opened = open(bytes);
  if (opened.rig.fixtures.size !== rig.fixtures.size) throw new Error(`${opened.rig.fixtures.size} rows were read`);
  if (opened.findings !== wanted.findings().length)
    throw new Error(`${opened.findings} findings, not those of the rig`);

  const repeats = smoke ? 1 : 7;
  const asObjects = JSON.stringify(rows);
  const asTuples = JSON.stringify(rows.map((row) => [row.id, ...FIELDS.map((field) => row[field] ?? null)]));
  const { ours, parse } = byTurns(
    () => open(bytes),
    () => JSON.parse(asObjects),
    repeats,
  );
  const parseTuples = measure(() => JSON.parse(asTuples), { warmUp: 2, repeats });
  const read = measure(() => readStored(bytes), { warmUp: 1, repeats });
  const heap = heapOf(() => open(bytes));
  const nested = encodeNested(rows);
  const openNested = measure(() => readNested(nested), { warmUp: 0, repeats: 1 });
  const nestedHeap = heapOf(() => readNested(nested));
  const ratio = ours / parse;
  return {
    ratio,
    figure: `${spellTime(ours)}, ${heap.toFixed(1)} MB`,
    baseline: `${spellTime(parse)} (JSON.parse of the rows as objects)`,
    ok: ratio <= 8 && heap <= HEAP_BAR,
    also: {
      'without findings': spellTime(read.median),
      'JSON.parse of the rows as lists': spellTime(parseTuples.median),
      'one nested Y.Map per row': `${spellTime(openNested.median)}, ${nestedHeap.toFixed(1)} MB`,
      'stored bytes': bytes.length,
    },
  };
}

/** Medians of two jobs done turn and turn about, so that a machine busy with something else is busy for both. */
function byTurns(ours: () => unknown, parse: () => unknown, repeats: number) {
  const times = { ours: [] as number[], parse: [] as number[] };
  for (let turn = 0; turn < repeats + 2; turn++) {
    const one = { ours: timeOf(ours), parse: timeOf(parse) };
    if (turn < 2) continue;
    times.ours.push(one.ours);
    times.parse.push(one.parse);
  }
  return { ours: percentile(times.ours, 0.5), parse: percentile(times.parse, 0.5) };
}

const timeOf = (work: () => unknown) => measure(work, { warmUp: 0, repeats: 1 }).median;

/** The large rig with every field filled that a row of a real list fills. */
function fullRig(fixtures: number): Rig {
  const rig = largeRig({ fixtures, perUniverse: 25, clashing: 0.001, seed: 11 });
  const rows = [...rowsOf(rig.fixtures)].map((row, at) =>
    readFixture(row.id, {
      ...cellsOf(row),
      colour: `Filter ${at % 300}`,
      circuit: `Circuit ${at}`,
      notes: at % 5 === 0 ? `See drawing ${at}, hang at trim` : 'As drawn',
    }),
  );
  return { ...rig, fixtures: tableOf(rows) };
}

function readStored(bytes: Uint8Array): Rig {
  const doc = new Y.Doc();
  Y.applyUpdate(doc, bytes);
  return readRig(doc);
}

function open(bytes: Uint8Array) {
  const doc = new Y.Doc();
  Y.applyUpdate(doc, bytes);
  const rig = readRig(doc);
  const checker = createChecker(rig);
  return { doc, rig, checker, findings: checker.findings().length };
}

/** Megabytes that what `make` answers with keeps in use. */
function heapOf(make: () => unknown): number {
  const before = heapInUse();
  const kept = [make()];
  const after = heapInUse();
  if (kept.length !== 1) throw new Error('nothing was kept');
  return (after - before) / 1e6;
}

function encodeNested(rows: readonly Readonly<Record<string, unknown>>[]): Uint8Array {
  const doc = new Y.Doc();
  doc.transact(() => {
    const map = doc.getMap('rows');
    for (const row of rows) map.set(String(row.id), new Y.Map(Object.entries(row)));
  });
  return Y.encodeStateAsUpdate(doc);
}

function readNested(bytes: Uint8Array) {
  const doc = new Y.Doc();
  Y.applyUpdate(doc, bytes);
  const rows: unknown[] = [];
  doc.getMap('rows').forEach((row) => {
    if (row instanceof Y.Map) rows.push(row.toJSON());
  });
  return { doc, rows };
}
