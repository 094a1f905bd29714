import { describe, expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import { occupancyFrom, type Seat } from '#engine/address/occupancy.ts';
import { absolute, SLOTS, type Slot, universeOf } from '#engine/model/address.ts';
import { fixtureId } from '#engine/model/ids.ts';
import { blocksOf, clashesOf } from './ribbon-blocks.ts';

const universe = universeOf(absolute(1, 1));
const seat = (name: string, first: number, last: number): Seat => {
  return { fixture: fixtureId(name), part: 1, first: first as Slot, last: last as Slot, over: 0 };
};
const slots = (percent: number) => Math.round((percent * SLOTS) / 100);

describe('ribbon', () => {
  it('hatches exactly the slots that are claimed twice', () => {
    for (let seed = 1; seed <= 200; seed++) {
      const rng = seededRng(seed);
      const seats = Array.from({ length: rng.int(12) }, (_, n) => {
        const first = 1 + rng.int(60);
        return seat(`f${n}`, first, Math.min(SLOTS, first + rng.int(14)));
      });
      const claimed = new Array<number>(SLOTS + 1).fill(0);
      for (const { first, last } of seats)
        for (let slot = first; slot <= last; slot++) claimed[slot] = (claimed[slot] ?? 0) + 1;
      const hatched = new Set<number>();
      for (const { left, width } of clashesOf(occupancyFrom(universe, seats), () => false)) {
        for (let n = 0; n < slots(width); n++) hatched.add(slots(left) + 1 + n);
      }
      const twice = claimed.flatMap((count, slot) => (count > 1 ? [slot] : []));
      expect(
        [...hatched].sort((a, b) => a - b),
        `seed ${seed}`,
      ).toEqual(twice);
    }
  });

  it('leaves units that act as one in peace, and draws each to scale', () => {
    const occupancy = occupancyFrom(universe, [seat('a', 1, 16), seat('b', 1, 16), seat('c', 257, 512)]);
    expect(clashesOf(occupancy, () => true)).toEqual([]);
    expect(blocksOf(occupancy).map(({ left, width }) => [left, width])).toEqual([
      [0, 3.125],
      [0, 3.125],
      [50, 50],
    ]);
  });
});
