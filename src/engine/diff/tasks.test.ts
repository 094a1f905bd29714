import { describe, expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import { randomEdit, randomRig } from '#tests/support/random-rig.ts';
import { applyEdits } from '../model/apply-edits.ts';
import { type FixtureId, fixtureId } from '../model/ids.ts';
import { EMPTY_RIG, type Rig } from '../model/rig.ts';
import { tasksOf } from './tasks.ts';

const SHAPE = { fixtures: 20, universes: 3 };
const SEEDS = Array.from({ length: 200 }, (_, seed) => seed);

function pair(seed: number): readonly [Rig, Rig] {
  const rng = seededRng(seed + 50_000);
  const before = randomRig(seed, SHAPE);
  if (rng.int(4) === 0) return [before, randomRig(seed + 1000, SHAPE)];
  return [
    before,
    applyEdits(
      before,
      Array.from({ length: rng.int(40) }, () => randomEdit(rng, SHAPE)),
    ),
  ];
}

const all = (before: Rig, after: Rig) => {
  const { units, rig } = tasksOf(before, after);
  return [...units, ...rig];
};

describe('what is to be done to make one rig another', () => {
  it('[DF4] makes them equal when all of it is done, in any order', () => {
    for (const seed of SEEDS) {
      const [before, after] = pair(seed);
      const rng = seededRng(seed);
      const tasks = all(before, after);
      const shuffled = tasks.map((task) => [rng.next(), task] as const).sort(([a], [b]) => a - b);
      const done = shuffled.reduce((rig, [, { edits }]) => applyEdits(rig, edits), before);
      expect(done, `seed ${seed}`).toEqual(after);
    }
  });

  it('[DF5] has nothing that is so already, and each thing once', () => {
    for (const seed of SEEDS) {
      const [before, after] = pair(seed);
      const tasks = all(before, after);
      for (const { edits, key } of tasks) expect(applyEdits(before, edits), `seed ${seed}, ${key}`).not.toEqual(before);
      expect(new Set(tasks.map(({ key }) => key)).size).toBe(tasks.length);
      expect(all(after, after)).toEqual([]);
    }
  });

  it('[DF5] without any one of them leaves them unlike', () => {
    for (const seed of SEEDS.slice(0, 12)) {
      const [before, after] = pair(seed);
      const tasks = all(before, after);
      for (const left of tasks) {
        const done = tasks.filter((task) => task !== left).reduce((rig, { edits }) => applyEdits(rig, edits), before);
        expect(done, `seed ${seed}, ${left.key}`).not.toEqual(after);
      }
    }
  });

  it('[DF6] goes from position to position as they stand, and from unit to unit, in the order in which one does it there', () => {
    const unit = (id: string, cells: object) =>
      ({ kind: 'add-fixture', fixture: fixtureId(id), cells: { type: 'Spot', ...cells } }) as const;
    const set = (id: string, field: 'address' | 'mode' | 'position' | 'channel', value: string | number) =>
      ({ kind: 'set-cell', fixture: fixtureId(id) as FixtureId, field, value }) as const;
    const before = applyEdits(EMPTY_RIG, [
      { kind: 'set-position', name: 'Bridge', order: 2 },
      { kind: 'set-position', name: 'Apron', order: 1 },
      unit('a', { position: 'Bridge', unit: '10', address: 1 }),
      unit('b', { position: 'Bridge', unit: '2', address: 20 }),
      unit('c', { position: 'Apron', unit: '1' }),
      unit('d', { position: 'Floor', unit: '1' }),
    ]);
    const after = applyEdits(before, [
      set('a', 'address', 40),
      set('a', 'mode', '16'),
      set('a', 'channel', 9),
      set('b', 'address', 60),
      set('d', 'position', 'Apron'),
      { kind: 'remove-fixture', fixture: fixtureId('c') },
    ]);
    expect(tasksOf(before, after).units.map(({ position, key }) => `${position}: ${key}`)).toEqual([
      'Apron: c take-down',
      'Apron: d move',
      'Bridge: b set-address',
      'Bridge: a set-mode',
      'Bridge: a set-address',
      'Bridge: a paper',
    ]);
  });
});
