import { describe, expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import { readSlots, slotsText } from './slots-text.ts';

describe('slots of a row', () => {
  it('[DR4] reading what was written gives the same slots', () => {
    for (let seed = 1; seed <= 300; seed++) {
      const rng = seededRng(seed);
      const first = 1 + rng.int(500);
      const slots = Array.from({ length: rng.int(5) }, (_, at) => (rng.int(2) === 0 ? first + at : 1 + rng.int(512)));
      expect(readSlots(slotsText(slots)), slots.join()).toEqual(slots);
    }
  });

  it.each<[string, readonly number[]]>([
    ['', []],
    ['  ', []],
    ['5', [5]],
    ['005', [5]],
    ['5-6', [5, 6]],
    ['5 – 6', [5, 6]],
    ['5..8', [5, 6, 7, 8]],
    ['5,9', [5, 9]],
    ['5/6', [5, 6]],
    ['5 6', [5, 6]],
    ['6 + 5', [6, 5]],
    ['1-2, 9', [1, 2, 9]],
  ])('[DR4] %s', (text, slots) => {
    expect(readSlots(text)).toEqual(slots);
  });
});
