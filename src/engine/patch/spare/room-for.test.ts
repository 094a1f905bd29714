import { describe, expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import { slotsOf } from '#tests/support/planned.ts';
import { idsOf, randomRig } from '#tests/support/random-rig.ts';
import { rigOf } from '#tests/support/rig-shorthand.ts';
import { createOccupancy } from '../../address/occupancy-index.ts';
import { absolute, type Universe } from '../../model/address.ts';
import type { Rig } from '../../model/rig.ts';
import { roomFor } from './room-for.ts';

const range = (first: number, last: number) => ({ first: first as Universe, last: last as Universe });

/** Counted by walking from slot to slot: the first start that is free, and on past the unit. */
function walked(rig: Rig, universe: number, slots: number, grid: number, end: number): number {
  const taken = new Set(idsOf(rig).flatMap((id) => slotsOf(rig, id)));
  let units = 0;
  for (let slot = 1; slot + slots - 1 <= end; ) {
    const run = Array.from({ length: slots }, (_, i) => absolute(universe, slot + i));
    const fits = (slot - 1) % grid === 0 && run.every((at) => !taken.has(at));
    units += Number(fits);
    slot += fits ? slots : 1;
  }
  return units;
}

describe('spare room', () => {
  it('[PL25] says how many more fit, and where', () => {
    const rig = rigOf('2:1 House/448\n5:101 House/12\n9:1 House/512');
    expect(roomFor(rig, [16])).toEqual({
      units: 35,
      universes: [
        { universe: 2, units: 4 },
        { universe: 5, units: 31 },
      ],
    });
    expect(roomFor(rig, [20, 12], { allowed: [range(1, 2)], grid: 32, spareAtEnd: 1 })).toEqual({
      units: 16,
      universes: [
        { universe: 1, units: 15 },
        { universe: 2, units: 1 },
      ],
    });
    expect(roomFor(rig, [513]).units).toBe(0);
    expect(roomFor(rig, [0]).units).toBe(0);
  });

  it('[PL25] counts what a walk from slot to slot counts', () => {
    for (let seed = 1; seed <= 150; seed++) {
      const rng = seededRng(seed);
      const rig = randomRig(seed, { fixtures: 25, universes: 3 });
      const slots = 1 + rng.int(60);
      const grid = rng.pick([1, 7, 10, 32]);
      const spareAtEnd = rng.pick([0, 30]);
      const { units, universes } = roomFor(rig, [slots], { grid, spareAtEnd });
      const counted = createOccupancy(rig)
        .universes()
        .map((universe) => ({ universe, units: walked(rig, universe, slots, grid, 512 - spareAtEnd) }))
        .filter((each) => each.units > 0);
      expect(universes, `seed ${seed}`).toEqual(counted);
      expect(units).toBe(counted.reduce((total, each) => total + each.units, 0));
    }
  });
});
