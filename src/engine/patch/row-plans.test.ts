import { describe, expect, it } from 'vitest';
import { countingIds } from '#base/random-id.ts';
import { seededRng } from '#base/rng.ts';
import { after, clashes, ids } from '#tests/support/planned.ts';
import { randomRig } from '#tests/support/random-rig.ts';
import { printRig, rigOf } from '#tests/support/rig-shorthand.ts';
import { applyEdits } from '../model/apply-edits.ts';
import { type FixtureId, fixtureId } from '../model/ids.ts';
import type { Rig } from '../model/rig.ts';
import { duplicatePlan, insertPlan, removePlan } from './row-plans.ts';

describe('rows', () => {
  const order = (rig: Rig) => printRig(rig).map((line) => line.split(' ')[0]);

  it('[PL9] inserts below a row, above all, or at the end, and keeps the order of the others', () => {
    const rig = rigOf('- S/1 x3');
    const insert = (at: FixtureId | null, count: number) => {
      const plan = insertPlan(
        rig,
        { after: at, rows: Array.from({ length: count }, () => ({ type: 'S' })) },
        countingIds('n'),
      );
      return plan.ok ? order(applyEdits(rig, plan.value.edits)) : plan.error;
    };
    expect(insert(fixtureId('f1'), 2)).toEqual(['f1', 'n1', 'n2', 'f2', 'f3']);
    expect(insert(null, 1)).toEqual(['n1', 'f1', 'f2', 'f3']);
    expect(insert(fixtureId('f3'), 1)).toEqual(['f1', 'f2', 'f3', 'n1']);
    expect(insert(fixtureId('gone'), 1)).toEqual({ code: 'no-such-fixture', fixture: 'gone' });
    expect(insert(null, 5001)).toEqual({ code: 'bad-number', value: 5001 });
  });

  it('[PL9] keeps the order however often rows are put into the same gap, and among rows of one order', () => {
    let rig = randomRig(8, { fixtures: 40, universes: 2 });
    const makeId = countingIds('n');
    const rng = seededRng(8);
    for (let round = 0; round < 400; round++) {
      const before = order(rig);
      const at = round < 200 ? 0 : rng.int(before.length);
      const count = 1 + rng.int(3);
      const rows = Array.from({ length: count }, () => ({}));
      const plan = insertPlan(rig, { after: before[at] as FixtureId, rows }, makeId);
      if (!plan.ok) throw new Error(plan.error.code);
      rig = applyEdits(rig, plan.value.edits);
      const now = order(rig);
      expect(now.filter((id) => before.includes(id))).toEqual(before);
      expect(now.indexOf(before[at]) + count + 1).toBe(
        before[at + 1] === undefined ? now.length : now.indexOf(before[at + 1]),
      );
    }
  });

  it('[PL10] removes rows', () => {
    const rig = rigOf('- S/1 x3');
    expect(after(rig, removePlan(rig, ids('f2 f3')))).toEqual(['f1 - S/1']);
  });

  it('[PL11] duplicates with the next number at the end of a position, else a suffix', () => {
    const rig = rigOf('1:1 Spot/16 #1 @LX1.4\n1:17 Spot/16 #2 @LX1.5\n1:33 Spot/16 #3 @LX1.4A');
    const copies = (names: string, count: number) => {
      const plan = duplicatePlan(rig, { fixtures: ids(names), copies: count, addresses: 'none' }, countingIds('n'));
      return plan.ok ? printRig(applyEdits(rig, plan.value.edits)).filter((line) => line.startsWith('n')) : plan.error;
    };
    expect(copies('f1', 2)).toEqual(['n1 - Spot/16 @LX1.4B', 'n2 - Spot/16 @LX1.4C']);
    expect(copies('f2', 2)).toEqual(['n1 - Spot/16 @LX1.6', 'n2 - Spot/16 @LX1.7']);
    expect(copies('f1', 0)).toEqual({ code: 'bad-number', value: 0 });
  });

  it('[PL11] places copies when asked to', () => {
    const rig = rigOf('1:1 Spot/16 x3 @LX1.1\n1:480 Fill/20');
    const plan = duplicatePlan(rig, { fixtures: ids('f2'), copies: 2, addresses: 'next-free' }, countingIds('n'));
    const lines = plan.ok ? printRig(applyEdits(rig, plan.value.edits)) : [];
    expect(lines.filter((line) => line.startsWith('n'))).toEqual([
      'n1 1:49 Spot/16 @LX1.2A',
      'n2 1:65 Spot/16 @LX1.2B',
    ]);
  });
});

describe('copies with addresses', () => {
  it('[PL11] keep breaks apart that lie in two universes, and never overlap', () => {
    const rig = rigOf('1:1+2:1 Bar/4+8 @X.1\n1:20 Dim/1');
    const request = { fixtures: ids('f1'), copies: 2, addresses: 'next-free' } as const;
    const plan = duplicatePlan(rig, request, countingIds('n'));
    const copied = plan.ok ? applyEdits(rig, plan.value.edits) : rig;
    expect(printRig(copied).filter((line) => line.startsWith('n'))).toEqual([
      'n1 1:5+2:9 Bar/4+8 @X.2',
      'n2 1:9+2:17 Bar/4+8 @X.3',
    ]);
    expect(clashes(copied)).toEqual([]);
  });
});
