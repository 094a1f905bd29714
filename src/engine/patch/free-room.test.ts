import { describe, expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import { ids, slotsOf, someOf } from '#tests/support/planned.ts';
import { idsOf, randomRig } from '#tests/support/random-rig.ts';
import { addressOf, rigOf } from '#tests/support/rig-shorthand.ts';
import { createOccupancy } from '../address/occupancy-index.ts';
import { absolute } from '../model/address.ts';
import { freeRoom } from './free-room.ts';

describe('free room', () => {
  it('[PL12] names the nearest in the universe, then the next universes', () => {
    const rig = rigOf('1:354 Spot/27\n1:374 Spot/27\n1:1 Fill/300\n1:428 Fill2/85\n2:1 Spot/27');
    const question = { footprints: [27], near: addressOf('1:374'), moving: ids('f2'), most: 3 };
    const starts = freeRoom(createOccupancy(rig), question).map((start) => start);
    expect(starts).toEqual([addressOf('1:381'), addressOf('1:327'), addressOf('2:28')]);
  });

  it('[PL12] always has room for what it names', () => {
    for (let seed = 1; seed <= 120; seed++) {
      const rng = seededRng(seed);
      const rig = randomRig(seed, { fixtures: 25, universes: 2 });
      const index = createOccupancy(rig);
      const [moving] = someOf(rng, rig);
      const footprints = rng.pick([[16], [10, 20], [1], [300]]);
      const starts = freeRoom(index, {
        footprints,
        near: absolute(1 + rng.int(2), 1 + rng.int(512)),
        moving: moving ? [moving] : [],
        most: 4,
      });
      expect(starts.length).toBe(4);
      const length = footprints.reduce((a, b) => a + b, 0);
      const taken = new Set(
        idsOf(rig)
          .filter((id) => id !== moving)
          .flatMap((id) => slotsOf(rig, id)),
      );
      for (const start of starts) {
        expect(((start - 1) % 512) + length).toBeLessThanOrEqual(512);
        for (let slot: number = start; slot < start + length; slot++)
          expect(taken.has(slot), `seed ${seed}`).toBe(false);
      }
    }
  });

  it('[PL12] names nothing for what fits into no universe', () => {
    expect(
      freeRoom(createOccupancy(rigOf('')), { footprints: [400, 113], near: addressOf('1:1'), moving: [], most: 3 }),
    ).toEqual([]);
  });
});
