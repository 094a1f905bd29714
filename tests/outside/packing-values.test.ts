import { describe, expect, it } from 'vitest';
import { bestFitDecreasing } from '#engine/patch/allocate/best-fit.ts';
import { countOpened } from '#engine/patch/allocate/bin.ts';
import { lowerBounds } from '#engine/patch/allocate/lower-bounds.ts';
import { PACK_STEPS, packBins } from '#engine/patch/allocate/pack-bins.ts';
import { fewestBins } from '#tests/support/exact-packing.ts';
import values from './check-values.json' with { type: 'json' };

// Values and where they are from: check-values.json, marked C: L1 and L2 as S. Martello and P. Toth define them (Knapsack
// Problems, 1990, chapter 8), BFD and the optimum computed by a program of its own.
const rows = Object.entries(values).filter(([, row]) => row.group === 'pack');

describe('packing against computed values (L1 and L2 of Martello and Toth)', () => {
  it.each(rows)('[PL22] value %s: bounds, best fit, fewest', (_n, { input, expected }) => {
    const capacity = Number(/c=(\d+)/.exec(input)?.[1]);
    const widths = [...input.matchAll(/(\d+)x(\d+)/g)].flatMap(([, count, width]) =>
      new Array<number>(Number(count)).fill(Number(width)),
    );
    const figure = (name: string) => Number(new RegExp(`${name} (\\d+)`).exec(expected)?.[1]);
    const job = { widths, rooms: [], capacity };
    expect(lowerBounds(widths, capacity)).toEqual({ l1: figure('L1'), l2: figure('L2') });
    expect(countOpened(bestFitDecreasing(job))).toBe(figure('BFD'));
    const { opened } = packBins(job, PACK_STEPS);
    if (!expected.includes('OPT')) {
      // The row of 146 units names no optimum: it lies between its bound and what best fit finds.
      expect(opened).toBeGreaterThanOrEqual(figure('L2'));
      expect(opened).toBeLessThanOrEqual(figure('BFD'));
      return;
    }
    expect(opened).toBe(figure('OPT'));
    expect(fewestBins(widths, capacity)).toBe(figure('OPT'));
  });

  it('has its rows', () => expect(rows).toHaveLength(17));
});
