import { describe, expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import { rowsOf } from '#base/table.ts';
import { randomPlan } from '#tests/support/random-plan.ts';
import { randomEdit, randomRig } from '#tests/support/random-rig.ts';
import { toldLedger } from '#tests/support/told-ledger.ts';
import { diffEdits } from '../diff/diff-edits.ts';
import { diffRigs } from '../diff/rig-diff.ts';
import { applyEdits } from '../model/apply-edits.ts';
import { fixtureId } from '../model/ids.ts';
import { EMPTY_RIG, type Rig } from '../model/rig.ts';
import { goBackPlan, lockedInTheWay } from '../patch/go-back-plan.ts';
import { canPutBack, putBackPlan } from '../patch/put-back-plan.ts';
import { CHANGE_PARTS } from './change.ts';
import { changesOf } from './changes-of.ts';

const SHAPE = { fixtures: 12, universes: 3 };
const SEEDS = Array.from({ length: 200 }, (_, seed) => seed);

/** A rig and one that some random edits made of it. */
function pair(seed: number): readonly [Rig, Rig] {
  const rng = seededRng(seed);
  const before = randomRig(seed, SHAPE);
  const edits = Array.from({ length: 1 + rng.int(20) }, () => randomEdit(rng, SHAPE));
  return [before, applyEdits(before, [...edits, ...randomPlan(rng, 12, 20).edits])];
}

describe('what changed', () => {
  it('[HI1] of all changes in order the last of each cell is what stands there', () => {
    for (const seed of SEEDS.slice(0, 40)) {
      const rng = seededRng(seed);
      const ledger = toldLedger();
      let rig: Rig = EMPTY_RIG;
      for (let step = 0; step < 30; step++) {
        const next = applyEdits(rig, [randomEdit(rng, SHAPE), ...randomPlan(rng, 12, 3).edits]);
        for (const { change } of changesOf(rig, next)) ledger.take(change);
        rig = next;
        expect(ledger.all(), `seed ${seed}, step ${step}`).toEqual(toldLedger(rig).all());
      }
    }
  });

  it('[HI2] is told once for each cell, and not at all where nothing changed', () => {
    for (const seed of SEEDS) {
      const [before, after] = pair(seed);
      const changes = changesOf(before, after).map(({ change }) => change);
      const cells = changes.map(({ part, row, field }) => JSON.stringify([part, row, field]));
      expect(new Set(cells).size).toBe(cells.length);
      for (const change of changes) expect(change.after, `seed ${seed}`).not.toEqual(change.before);
      expect(changesOf(after, applyEdits(after, []))).toEqual([]);
    }
  });

  it('[HI3] put back sets one cell or row to what it was, and nothing else', () => {
    const parts = new Set<string>();
    for (const seed of SEEDS) {
      const [before, after] = pair(seed);
      for (const { change } of changesOf(before, after)) {
        if (!canPutBack(change)) continue;
        const plan = putBackPlan(after, change);
        if (!plan.ok) {
          expect(plan.error.code, `seed ${seed}`).toBe('locked');
          continue;
        }
        const told = changesOf(after, applyEdits(after, plan.value.edits)).map((each) => each.change);
        const { part, row, field } = change;
        parts.add(part);
        expect(told, `seed ${seed}`).toEqual([{ part, row, field, before: change.after, after: change.before }]);
      }
    }
    expect([...parts].sort()).toEqual(CHANGE_PARTS.filter((part) => part !== 'mode').sort());
  });

  it('[HI4] going back makes the rig what it was, unless a locked unit stands in the way, which it names', () => {
    let refused = 0;
    for (const seed of SEEDS) {
      const [then, now] = pair(seed);
      const edits = diffEdits(diffRigs(now, then));
      const plan = goBackPlan(now, then);
      const locked = lockedInTheWay(now, edits);
      if (plan.ok) {
        expect(locked).toEqual([]);
        expect(diffEdits(diffRigs(applyEdits(now, plan.value.edits), then)), `seed ${seed}`).toEqual([]);
      } else if (plan.error.code === 'locked') {
        refused += 1;
        expect(locked).toContain(plan.error.fixture);
        for (const id of locked) expect([...rowsOf(now.fixtures)].find((row) => row.id === id)?.lock).not.toBe('');
      } else expect(edits).toEqual([]);
    }
    expect(refused).toBeGreaterThan(0);
  });

  it('[HI3] nothing is put back on what is gone, or that is so already', () => {
    const cell = { part: 'unit', row: fixtureId('none'), field: 'purpose', before: 'a', after: 'b' } as const;
    expect(putBackPlan(EMPTY_RIG, cell)).toEqual({ ok: false, error: { code: 'changes-nothing' } });
  });
});
