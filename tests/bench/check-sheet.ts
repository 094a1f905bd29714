import { HyperFormula } from 'hyperformula';
import { seededRng } from '#base/rng.ts';
import { setRow } from '#base/table.ts';
import { claimsOf } from '#engine/address/claim.ts';
import { type Checker, createChecker } from '#engine/check/checker.ts';
import { absolute, slotOf, universeOf } from '#engine/model/address.ts';
import { modeOf } from '#engine/model/find-mode.ts';
import type { Fixture } from '#engine/model/fixture.ts';
import { cellsOf, readFixture } from '#engine/model/read-fixture.ts';
import type { Rig } from '#engine/model/rig.ts';
import { rowsInOrder } from '#engine/model/row-order.ts';
import type { Outcome } from './frame/bench.ts';
import { largeRig } from './frame/large-rig.ts';
import { percentile, spellTime } from './frame/measure.ts';

export const name = 'check-sheet';
export const bar = '>=100,000x per edit, 2,000 rows, same answers';

/** A step is far below what one timing can tell: each edit is taken back and made again so often, and the median counts. */
const AGAIN = 200;

/**
 * The overlap rule as people write it in a spreadsheet: beside each row, how many other rows of its universe share a slot
 * with it, by COUNTIFS over the whole column. Per edit of an address: how long the sheet recalculates, and a checker steps.
 */
export function run({ smoke }: { readonly smoke: boolean }): Outcome {
  const fixtures = smoke ? 60 : 2000;
  let rig = largeRig({ fixtures, perUniverse: 25, clashing: 0.02, seed: 11 });
  const rows = rowsInOrder(rig);
  const sheet = sheetOf(rig, rows);
  const checker = createChecker(rig);
  warmUp(checker, rig, rows);
  const rng = seededRng(5);
  const sheetTimes: number[] = [];
  const stepTimes: number[] = [];
  const firstTimes: number[] = [];
  mustAgree(sheet, checker, rows);
  for (let edit = 0; edit < (smoke ? 3 : 9); edit++) {
    const at = rng.int(rows.length);
    const moved = atAddress(rows[at] as Fixture, 1 + rng.int(Math.ceil(fixtures / 25)), 1 + rng.int(470));
    const before = rig;
    rows[at] = moved;
    rig = { ...rig, fixtures: setRow(rig.fixtures, moved) };
    const cells = [[...intervalOf(rig, moved)]];
    sheetTimes.push(timed(() => sheet.setCellContents({ sheet: 0, row: at, col: 0 }, cells)));
    firstTimes.push(timed(() => checker.update(rig)));
    for (let again = 0; again < AGAIN; again++) {
      checker.update(before);
      stepTimes.push(timed(() => checker.update(rig)));
    }
    mustAgree(sheet, checker, rows);
  }
  sheet.destroy();
  const sheetEdit = percentile(sheetTimes, 0.5);
  const step = percentile(stepTimes, 0.5);
  return {
    ratio: sheetEdit / step,
    figure: spellTime(step),
    baseline: `${spellTime(sheetEdit)} (COUNTIFS)`,
    ok: sheetEdit / step >= 100_000,
    also: { 'the first step after the sheet, with cold caches': spellTime(percentile(firstTimes, 0.5)) },
  };
}

function timed(work: () => unknown): number {
  const from = performance.now();
  work();
  return performance.now() - from;
}

function atAddress(fixture: Fixture, universe: number, slot: number): Fixture {
  return readFixture(fixture.id, { ...cellsOf(fixture), address: absolute(universe, slot) });
}

/** Moves rows to and fro, so that the checker's code is compiled; it stands at `rig` again afterwards. */
function warmUp(checker: Checker, rig: Rig, rows: readonly Fixture[]): void {
  const rng = seededRng(6);
  for (let step = 0; step < 4000; step++) {
    const moved = atAddress(rng.pick(rows), 1 + rng.int(Math.ceil(rows.length / 25)), 1 + rng.int(470));
    checker.update({ ...rig, fixtures: setRow(rig.fixtures, moved) });
    checker.update(rig);
  }
}

function intervalOf(rig: Rig, fixture: Fixture): readonly [universe: number, first: number, last: number] {
  const [claim] = claimsOf(fixture, modeOf(rig, fixture));
  const address = fixture.addresses[0] ?? absolute(1, 1);
  return [universeOf(address), slotOf(address), claim?.last ?? slotOf(address)];
}

/** Columns A to C: universe, first slot, last slot; column D: how many others share a slot. */
function sheetOf(rig: Rig, rows: readonly Fixture[]): HyperFormula {
  const n = rows.length;
  const cells = rows.map((fixture, at) => {
    const row = at + 1;
    const others = `=COUNTIFS($A$1:$A$${n},A${row},$B$1:$B$${n},"<="&C${row},$C$1:$C$${n},">="&B${row})-1`;
    return [...intervalOf(rig, fixture), others];
  });
  return HyperFormula.buildFromArray(cells, { licenseKey: 'gpl-v3' });
}

/** Throws unless each row's findings name exactly as many others as its formula counts. */
function mustAgree(sheet: HyperFormula, checker: Checker, rows: readonly Fixture[]): void {
  for (const [row, { id }] of rows.entries()) {
    const others = new Set(checker.findingsOf(id).flatMap((finding) => ('run' in finding ? finding.fixtures : [])));
    others.delete(id);
    const counted = sheet.getCellValue({ sheet: 0, row, col: 3 });
    if (counted !== others.size) throw new Error(`row ${row}: COUNTIFS says ${counted}, the findings ${others.size}`);
  }
}
