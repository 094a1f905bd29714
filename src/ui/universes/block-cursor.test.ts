import { describe, expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import { createOccupancy } from '#engine/address/occupancy-index.ts';
import { absolute, universeOf } from '#engine/model/address.ts';
import { randomRig } from '#tests/support/random-rig.ts';
import { rigOf } from '#tests/support/rig-shorthand.ts';
import { blockKey, blockOfKey, cursorSeat, type Ribbons } from './block-cursor.ts';

const universe = (n: number) => universeOf(absolute(n, 1));

function ribbonsOf(rig: ReturnType<typeof rigOf>, extra: readonly number[] = []): Ribbons {
  const occupancy = createOccupancy(rig);
  const universes = [...new Set([...occupancy.universes(), ...extra.map(universe)])].sort((a, b) => a - b);
  return { universes, of: (each) => occupancy.of(each) };
}

describe('the cursor on a block', () => {
  it('comes to every block by the keys alone, and never leaves the blocks', () => {
    for (let seed = 1; seed <= 40; seed++) {
      const rng = seededRng(seed);
      const ribbons = ribbonsOf(randomRig(seed, { fixtures: 20, universes: 4 }), [2, 5]);
      const first = cursorSeat(undefined, ribbons);
      if (first === undefined) continue;
      let cursor = { universe: first.universe, key: blockKey(first.seat) };
      for (let step = 0; step < 60; step++) {
        const key = rng.pick(['ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown', 'Home', 'End']);
        const next = blockOfKey(key, cursor, ribbons);
        expect(next, `seed ${seed}`).toBeDefined();
        cursor = next ?? cursor;
        const keys = ribbons.of(cursor.universe).seats.map(blockKey);
        expect(keys, `seed ${seed}`).toContain(cursor.key);
      }
      const reached = new Set<string>();
      for (const each of ribbons.universes) {
        let at = blockOfKey('Home', { universe: each, key: '' }, ribbons);
        for (let n = 0; n < 60 && at !== undefined; n++) {
          reached.add(at.key);
          at = blockOfKey('ArrowRight', at, ribbons);
        }
      }
      const all = ribbons.universes.flatMap((each) => ribbons.of(each).seats.map(blockKey));
      expect([...reached].sort(), `seed ${seed}`).toEqual([...all].sort());
    }
  });

  it('goes to the nearest block of the next ribbon that has any', () => {
    const ribbons = ribbonsOf(rigOf('1:100 Spot/16\n4:1 Spot/16\n4:90 Spot/16\n4:300 Spot/16'), [2, 3, 9]);
    const from = { universe: universe(1), key: 'f1 1' };
    expect(blockOfKey('ArrowDown', from, ribbons)).toEqual({ universe: universe(4), key: 'f3 1' });
    expect(blockOfKey('ArrowUp', from, ribbons)).toEqual(from);
    expect(blockOfKey('ArrowDown', { universe: universe(4), key: 'f4 1' }, ribbons)?.key).toBe('f4 1');
    expect(blockOfKey('q', from, ribbons)).toBeUndefined();
  });

  it('falls back to what is there when its block has gone', () => {
    const ribbons = ribbonsOf(rigOf('1:100 Spot/16\n4:1 Spot/16'));
    expect(cursorSeat({ universe: universe(4), key: 'gone 1' }, ribbons)?.seat.fixture).toBe('f2');
    expect(cursorSeat({ universe: universe(7), key: 'f2 1' }, ribbons)?.seat.fixture).toBe('f1');
    expect(cursorSeat(undefined, ribbonsOf(rigOf('')))).toBeUndefined();
  });
});
