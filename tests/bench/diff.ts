import { seededRng } from '#base/rng.ts';
import { rowsOf, tableOf } from '#base/table.ts';
import { diffRigs } from '#engine/diff/rig-diff.ts';
import { type CellValue, FIELDS } from '#engine/model/field.ts';
import type { Fixture } from '#engine/model/fixture.ts';
import { cellOf, cellsOf, readFixture } from '#engine/model/read-fixture.ts';
import type { Rig } from '#engine/model/rig.ts';
import type { Outcome } from './frame/bench.ts';
import { largeRig } from './frame/large-rig.ts';
import { measure, spellTime } from './frame/measure.ts';

export const name = 'diff';
export const bar = 'two revisions of 50,000 fixtures, 500 changed: <=5 ms';

const BAR_MS = 5;

/** Compares two rigs that share no object, as two revisions do that were read from the store. */
export function run({ smoke }: { readonly smoke: boolean }): Outcome {
  const size = smoke ? { fixtures: 500, changed: 5 } : { fixtures: 50_000, changed: 500 };
  const before = readAnew(largeRig({ fixtures: size.fixtures, perUniverse: 25, clashing: 0.01, seed: 5 }), 0);
  const after = readAnew(before, size.changed);
  const expected = naiveDiff(before, after);
  const found = diffRigs(before, after).fixtures.map(({ id }) => id);
  if (found.length !== expected.length || found.toSorted().join() !== expected.toSorted().join())
    throw new Error(`${found.length} units differ, not ${expected.length}`);
  const repeats = smoke ? 3 : 60;
  const ours = measure(() => diffRigs(before, after), { warmUp: repeats / 3, repeats });
  const naive = measure(() => naiveDiff(before, after), { warmUp: 2, repeats: repeats / 3 });
  return {
    ratio: naive.median / ours.median,
    figure: spellTime(ours.median),
    baseline: `${spellTime(naive.median)} (naive map diff)`,
    ok: ours.median <= BAR_MS,
    also: { least: spellTime(ours.least), changed: expected.length },
  };
}

/** The rig as the store gives it, through text; `changed` of its units say something else. */
function readAnew(rig: Rig, changed: number): Rig {
  const stored: readonly (readonly [string, Record<string, CellValue>])[] = JSON.parse(
    JSON.stringify([...rowsOf(rig.fixtures)].map((row) => [row.id, cellsOf(row)])),
  );
  const rng = seededRng(9);
  const chosen = new Set<number>();
  while (chosen.size < changed) chosen.add(rng.int(stored.length));
  const rows = stored.map(([id, cells], at) =>
    readFixture(id as Fixture['id'], chosen.has(at) ? { ...cells, purpose: `changed ${at}` } : cells),
  );
  return { ...rig, fixtures: tableOf(rows) };
}

/** As one writes it first: a map of all rows by id, every cell of every row compared. */
function naiveDiff(before: Rig, after: Rig): string[] {
  const old = new Map([...rowsOf(before.fixtures)].map((row) => [row.id, row]));
  const differing: string[] = [];
  for (const row of rowsOf(after.fixtures)) {
    const was = old.get(row.id);
    old.delete(row.id);
    if (was === undefined || FIELDS.some((field) => cellOf(row, field) !== cellOf(was, field))) differing.push(row.id);
  }
  return [...differing, ...old.keys()];
}
