import { parse } from 'csv-parse/sync';
import { stringify } from 'csv-stringify/sync';
import { checkRig } from '#engine/check/check-rig.ts';
import type { Rig } from '#engine/model/rig.ts';
import { makeSheet } from '#engine/sheet/make-sheet.ts';
import type { Sheet, SheetCell } from '#engine/sheet/sheet.ts';
import { unguardText } from '#exchange/csv/formula-guard.ts';
import { encodeChunks } from '#exchange/csv/write-csv.ts';
import { writeSheet } from '#exchange/csv/write-sheet.ts';
import { NOTHING_STANDS, sheetHead, sheetHeading, sheetPartTitle, standingOf } from '#words/sheets.ts';
import type { Outcome } from './frame/bench.ts';
import { largeRig } from './frame/large-rig.ts';
import { measure, percentile, spellTime } from './frame/measure.ts';

export const name = 'sheet';
export const bar = '<=1.0x csv-stringify on ready-made rows, first row <=50 ms, 50,000 rows';

/**
 * A patch sheet from a rig to its last byte (sorting, cells, words, guard, UTF-8), against csv-stringify with its own
 * formula guard writing the same table from rows that were made before. The findings are handed to both ready-made: a
 * live rig keeps them.
 */
export function run({ smoke }: { readonly smoke: boolean }): Outcome {
  const rig = largeRig({ fixtures: smoke ? 500 : 50_000, perUniverse: 25, clashing: 0.001, seed: 7 });
  const findings = checkRig(rig);
  const make = () => makeSheet('patch', rig, standingOf(rig, findings));
  const ready = make();
  const repeats = { warmUp: smoke ? 1 : 3, repeats: smoke ? 1 : 9 };
  const rows: Rows = [...ready.rows];
  mustAgree(rows, rig, make);
  const baseline = measure(() => Buffer.from(theirs(rows)), repeats);
  const ours = measure(() => allBytes(make()), repeats);
  const first = Array.from({ length: smoke ? 1 : 9 }, () => firstRow(make));
  const ratio = ours.median / baseline.median;
  return {
    ratio,
    figure: spellTime(ours.median),
    baseline: spellTime(baseline.median),
    ok: ratio <= 1 && percentile(first, 0.5) <= 50,
    also: {
      'first row': spellTime(percentile(first, 0.5)),
      'from ready-made rows': spellTime(measure(() => allBytes({ ...ready, rows }), repeats).median),
    },
  };
}

type Rows = readonly (readonly SheetCell[])[];

const words = {
  head: sheetHead('patch', 'Large rig', 0),
  heading: sheetHeading,
  part: sheetPartTitle,
  nothingStands: NOTHING_STANDS,
};

function allBytes(sheet: Sheet): number {
  let bytes = 0;
  for (const chunk of encodeChunks(writeSheet(sheet, words), 'no-mark')) bytes += chunk.length;
  return bytes;
}

/** Milliseconds from the rig to the first chunk of bytes, which holds title, headings and the first rows. */
function firstRow(make: () => Sheet): number {
  const from = performance.now();
  encodeChunks(writeSheet(make(), words), 'no-mark').next();
  return performance.now() - from;
}

function theirs(rows: Rows): string {
  return stringify(rows as unknown[][], { record_delimiter: '\r\n', escape_formulas: true });
}

/** Throws unless a reader from outside finds in our bytes the rows that csv-stringify wrote. */
function mustAgree(rows: Rows, rig: Rig, make: () => Sheet): void {
  const text = Buffer.concat([...encodeChunks(writeSheet(make(), words), 'no-mark')]).toString();
  const before = words.head.length + 2;
  const ours: string[][] = parse(text, { from: before + 1, to: before + rig.fixtures.size });
  const same = JSON.stringify(ours.map((row) => row.map(unguardText))) === JSON.stringify(parse(theirs(rows)));
  if (!same) throw new Error(`our ${ours.length} rows are not those that csv-stringify wrote`);
}
