import { describe, expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import type { Universe } from '../model/address.ts';
import { openRanges, parseUniverseRanges, type UniverseRange, universesIn } from './universe-ranges.ts';

describe('universe ranges', () => {
  it('[AD12] reads numbers and ranges of them, and refuses what are none', () => {
    const read = (text: string) => {
      const ranges = parseUniverseRanges(text);
      return ranges.ok ? ranges.value.map(({ first, last }) => `${first}-${last}`).join(' ') : ranges.error;
    };
    expect(read('1-4, 7')).toBe('1-4 7-7');
    expect(read(' 12 – 9 ;3,')).toBe('9-12 3-3');
    expect(read('  ')).toBe('');
    expect(read('1-2-3')).toBe('not-universes');
    expect(read('front')).toBe('not-universes');
    expect(read('0-4')).toBe('universe-out-of-range');
    expect(read('64000')).toBe('universe-out-of-range');
  });

  it('[AD12] opens exactly what is allowed and not barred, ascending', () => {
    for (let seed = 1; seed <= 300; seed++) {
      const rng = seededRng(seed);
      const some = (most: number): UniverseRange[] =>
        Array.from({ length: rng.int(most) }, () => {
          const first = 1 + rng.int(30);
          return { first: first as Universe, last: (first + rng.int(6)) as Universe };
        });
      const allowed = [{ first: 2 as Universe, last: 4 as Universe }, ...some(5)];
      const barred = some(5);
      const holds = (ranges: readonly UniverseRange[], at: number) =>
        ranges.some(({ first, last }) => first <= at && at <= last);
      const wanted = Array.from({ length: 40 }, (_, i) => i + 1).filter(
        (at) => holds(allowed, at) && !holds(barred, at),
      );
      expect([...universesIn(openRanges(allowed, barred))], `seed ${seed}`).toEqual(wanted);
    }
    expect(openRanges([], [{ first: 3 as Universe, last: 63999 as Universe }])).toEqual([{ first: 1, last: 2 }]);
  });
});
