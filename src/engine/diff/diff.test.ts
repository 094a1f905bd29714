import { describe, expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import { rowsOf, tableOf } from '#base/table.ts';
import { randomEdit, randomRig } from '#tests/support/random-rig.ts';
import { applyEdits } from '../model/apply-edits.ts';
import { cellsOf, readFixture } from '../model/read-fixture.ts';
import type { Rig } from '../model/rig.ts';
import { diffEdits } from './diff-edits.ts';
import { diffRigs, reverseDiff } from './rig-diff.ts';

const SHAPE = { fixtures: 24, universes: 3 };
const SEEDS = Array.from({ length: 300 }, (_, seed) => seed);

/** The same rig of other objects. */
function twin(rig: Rig): Rig {
  const clone = <Row extends { readonly id: string }>(table: Rig['notes'] | { readonly size: number }) =>
    tableOf(structuredClone([...rowsOf(table as never)]) as Row[]);
  return {
    ...(Object.fromEntries(Object.entries(rig).map(([name, table]) => [name, clone(table)])) as unknown as Rig),
    fixtures: tableOf([...rowsOf(rig.fixtures)].map((row) => readFixture(row.id, cellsOf(row)))),
  };
}

/** Two rigs that have some things in common: one led by random edits to the other, or with nothing in common. */
function pair(seed: number): readonly [Rig, Rig] {
  const rng = seededRng(seed);
  const before = randomRig(seed, SHAPE);
  if (rng.int(4) === 0) return [before, randomRig(seed + 1000, SHAPE)];
  const edits = Array.from({ length: rng.int(40) }, () => randomEdit(rng, SHAPE));
  return [before, applyEdits(before, edits)];
}

describe('the difference of two rigs', () => {
  it('[DF1] of a rig and its like is nothing, whatever objects they are', () => {
    for (const seed of SEEDS.slice(0, 60)) {
      const rig = pair(seed)[1];
      for (const rows of Object.values(diffRigs(rig, twin(rig)))) expect(rows, `seed ${seed}`).toEqual([]);
    }
  });

  it('[DF2] applied to the first gives the second', () => {
    for (const seed of SEEDS) {
      const [before, after] = pair(seed);
      expect(applyEdits(before, diffEdits(diffRigs(before, after))), `seed ${seed}`).toEqual(after);
    }
  });

  it('[DF3] reversed gives back the first', () => {
    for (const seed of SEEDS) {
      const [before, after] = pair(seed);
      const back = reverseDiff(diffRigs(before, after));
      expect(applyEdits(after, diffEdits(back)), `seed ${seed}`).toEqual(before);
      expect(back).toEqual(diffRigs(after, before));
    }
  });

  it('[DF2] names nothing that is alike already', () => {
    for (const seed of SEEDS.slice(0, 100)) {
      const [before, after] = pair(seed);
      for (const edit of diffEdits(diffRigs(before, after)))
        expect(applyEdits(before, [edit]), `seed ${seed}: ${JSON.stringify(edit)}`).not.toEqual(before);
    }
  });
});
