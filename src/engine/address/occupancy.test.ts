import { describe, expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import { randomEdit, randomRig } from '#tests/support/random-rig.ts';
import { rigOf } from '#tests/support/rig-shorthand.ts';
import type { Universe } from '../model/address.ts';
import { applyEdits } from '../model/apply-edits.ts';
import { EMPTY_RIG } from '../model/rig.ts';
import { rowsInOrder } from '../model/row-order.ts';
import { slotRuns } from './claim.ts';
import { type Occupancy, occupancyOf, universesInUse } from './occupancy.ts';
import { createOccupancy } from './occupancy-index.ts';

const runsOf = (text: string) => {
  const rig = rigOf(text);
  return rowsInOrder(rig).flatMap((fixture) =>
    slotRuns(rig, fixture).map(
      ({ universe, first, last, part, over }) => `${part}: ${universe}:${first}-${last} over ${over}`,
    ),
  );
};

const seats = ({ seats: list }: Occupancy) => list.map(({ fixture, first, last }) => `${fixture} ${first}-${last}`);

describe('claims', () => {
  it('[OC1] take a footprint from the start on, break by break', () => {
    expect(runsOf('2:101 Spot/16')).toEqual(['1: 2:101-116 over 0']);
    expect(runsOf('2:101+3:1 Bar/10+20')).toEqual(['1: 2:101-110 over 0', '2: 3:1-20 over 0']);
    expect(runsOf('-+3:1 Bar/10+20')).toEqual(['2: 3:1-20 over 0']);
    expect(runsOf('2:1+2:5+2:9 Bar/3+0')).toEqual(['1: 2:1-3 over 0']);
    expect(runsOf('- Spot/16')).toEqual([]);
  });

  it('[OC2] are cut at slot 512', () => {
    expect(runsOf('3:500 Batten/48')).toEqual(['1: 3:500-512 over 35']);
    expect(runsOf('3:497 Spot/16')).toEqual(['1: 3:497-512 over 0']);
    expect(runsOf('3:1 Wall/600')).toEqual(['1: 3:1-512 over 88']);
  });

  it('[OC3] take one slot per start address when the mode is not known', () => {
    expect(runsOf('3:500+4:1 Batten/?')).toEqual(['1: 3:500-500 over 0', '2: 4:1-1 over 0']);
  });
});

describe('occupancy', () => {
  it('[OC4] lists who sits where, and the free runs between', () => {
    const occupancy = occupancyOf(rigOf('1:11 Spot/10 x2\n1:400 Spot/10\n1:25 Spot/10\n2:1 Spot/10'), 1 as Universe);
    expect(seats(occupancy)).toEqual(['f1 11-20', 'f2 21-30', 'f4 25-34', 'f3 400-409']);
    expect(occupancy.free.map(({ first, last }) => `${first}-${last}`)).toEqual(['1-10', '35-399', '410-512']);
    expect(occupancy.freeSlots).toBe(10 + 365 + 103);
  });

  it('[OC4] claims and free runs together cover every slot', () => {
    for (let seed = 1; seed <= 60; seed++) {
      const rig = randomRig(seed, { fixtures: 30, universes: 2 });
      for (const universe of universesInUse(rig)) {
        const { seats: sat, free, freeSlots } = occupancyOf(rig, universe);
        const slots = Array.from({ length: 513 }, () => 0);
        for (const { first, last } of sat) slots.fill(1, first, last + 1);
        for (const { first, last } of free)
          for (let slot = first; slot <= last; slot++) slots[slot] = (slots[slot] ?? 0) + 2;
        expect(
          slots.slice(1).every((count) => count === 1 || count === 2),
          `seed ${seed}`,
        ).toBe(true);
        expect(slots.filter((count) => count === 2).length).toBe(freeSlots);
      }
    }
  });

  it('[OC5] an index says after any sequence of edits what a look at every fixture says', () => {
    for (let seed = 1; seed <= 12; seed++) {
      const shape = { fixtures: 30, universes: 3 };
      const rng = seededRng(seed);
      let rig = randomRig(seed, shape);
      const index = createOccupancy(rig);
      for (let step = 0; step < 150; step++) {
        rig = applyEdits(rig, [randomEdit(rng, shape)]);
        const before = index.universes().map((universe) => [universe, index.of(universe)] as const);
        const { universes: dirty } = index.update(rig);
        expect(index.universes()).toEqual(universesInUse(rig));
        for (const universe of index.universes()) expect(index.of(universe)).toEqual(occupancyOf(rig, universe));
        const touched = new Set(dirty);
        for (const [universe, occupancy] of before)
          if (!touched.has(universe)) expect(index.of(universe)).toBe(occupancy);
      }
    }
  });

  it('[OC5] holds a universe of thousands of claims, and lets go of it', () => {
    const rig = randomRig(4, { fixtures: 3000, universes: 1 });
    const index = createOccupancy(rig);
    expect(index.of(1 as Universe)).toEqual(occupancyOf(rig, 1 as Universe));
    index.update(EMPTY_RIG);
    expect(index.universes()).toEqual([]);
    expect(index.of(1 as Universe).freeSlots).toBe(512);
  });
});
