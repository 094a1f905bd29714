import { describe, expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import { atResolution, type DmxValue, highest } from './dmx-value.ts';

const RESOLUTIONS = [1, 2, 3, 4] as const;

describe('atResolution', () => {
  it('[FT8] keeps the ends and the order of values, and narrows back what it widened', () => {
    const rng = seededRng(64);
    for (let round = 0; round < 4000; round++) {
      const bytes = rng.pick(RESOLUTIONS);
      const to = rng.pick(RESOLUTIONS);
      const [low, high] = [rng.int(256 ** bytes), rng.int(256 ** bytes)].sort((a, b) => a - b) as [number, number];
      for (const fill of ['mirror', 'shift'] as const) {
        const at = (value: number): number => atResolution({ value, bytes, fill }, to);
        expect(at(0)).toBe(0);
        expect(at(low)).toBeLessThanOrEqual(at(high));
        expect(at(high)).toBeLessThanOrEqual(highest(to));
        if (to >= bytes) expect(atResolution({ value: at(high), bytes: to, fill }, bytes)).toBe(high);
      }
      expect(atResolution({ value: highest(bytes), bytes, fill: 'mirror' }, to)).toBe(highest(to));
    }
  });

  it('[FT8] repeats bytes where the lengths do not divide', () => {
    const value: DmxValue = { value: 0x80_00, bytes: 2, fill: 'mirror' };
    expect(atResolution(value, 3)).toBe(0x80_00_80);
    expect(atResolution({ ...value, fill: 'shift' }, 3)).toBe(0x80_00_00);
  });
});
