import { describe, expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import { addressOf, rigOf } from '#tests/support/rig-shorthand.ts';
import { createOccupancy } from '../address/occupancy-index.ts';
import { type Absolute, absolute } from '../model/address.ts';
import { Room } from './room.ts';

const roomOf = (text: string) => new Room(createOccupancy(rigOf(text)), () => false);

describe('room', () => {
  it('knows no less of a universe after a look at its end', () => {
    const room = roomOf('1:101 Fill/380');
    expect(room.firstIn(1, 400, 50)).toBeUndefined();
    expect(room.firstIn(1, 1, 50)).toBe(1);
    expect(room.first(addressOf('1:60'), 50)).toBe(addressOf('2:1'));
  });

  it('is used up by what is taken', () => {
    const room = roomOf('1:101 Fill/412');
    room.take(addressOf('1:1'), 60);
    expect(room.firstIn(1, 1, 41)).toBeUndefined();
    expect(room.firstIn(1, 1, 40)).toBe(61);
    expect([...room.stretches(1)]).toEqual([{ first: 61, last: 100 }]);
  });

  it('answers as a slot-by-slot search does, whatever was asked and taken before', () => {
    for (let seed = 1; seed <= 40; seed++) {
      const rng = seededRng(seed);
      const room = roomOf('');
      const taken = new Uint8Array(3 * 512 + 1);
      const fits = (start: number, length: number) =>
        ((start - 1) % 512) + length <= 512 && taken.subarray(start, start + length).every((slot) => slot === 0);
      for (let step = 0; step < 60; step++) {
        const length = 1 + rng.int(120);
        const near = (1 + rng.int(512)) as Absolute;
        const starts = Array.from({ length: 512 }, (_, at) => at + 1).filter((start) => fits(start, length));
        const distance = (start: number) => Math.abs(start - near);
        const nearest = starts.sort((a, b) => distance(a) - distance(b) || a - b)[0];
        expect(room.nearest(near, length), `seed ${seed}, step ${step}`).toBe(nearest);
        const start = nearest ?? absolute(2, 1 + rng.int(300));
        room.take(start as Absolute, length);
        taken.fill(1, start, start + length);
      }
    }
  });
});
