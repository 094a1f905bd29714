import { describe, expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import { bestFitDecreasing } from '#engine/patch/allocate/best-fit.ts';
import { countOpened } from '#engine/patch/allocate/bin.ts';
import { lowerBounds } from '#engine/patch/allocate/lower-bounds.ts';
import { PACK_STEPS, packBins } from '#engine/patch/allocate/pack-bins.ts';
import { fewestBins } from '#tests/support/exact-packing.ts';
import { boundByHighs, fewestByHighs } from '#tests/support/highs-packing.ts';
import values from './check-values.json' with { type: 'json' };

// Values and where they are from: check-values.json, marked C: L1 and L2 as S. Martello and P. Toth define them (Knapsack
// Problems, 1990, chapter 8), BFD and the optimum computed by a program of its own. Each is asked of HiGHS as well, a general-purpose solver of
// linear and whole-number programs (npm `highs`).
const rows = Object.entries(values).filter(([, row]) => row.group === 'pack');

describe('packing against computed values (L1 and L2 of Martello and Toth)', () => {
  it.each(rows)('[PL22] value %s: bounds, best fit, fewest', { timeout: 60_000 }, async (_n, { input, expected }) => {
    const capacity = Number(/c=(\d+)/.exec(input)?.[1]);
    const widths = [...input.matchAll(/(\d+)x(\d+)/g)].flatMap(([, count, width]) =>
      new Array<number>(Number(count)).fill(Number(width)),
    );
    const figure = (name: string) => Number(new RegExp(`${name} (\\d+)`).exec(expected)?.[1]);
    const job = { widths, rooms: [], capacity };
    expect(lowerBounds(widths, capacity)).toEqual({ l1: figure('L1'), l2: figure('L2') });
    expect(countOpened(bestFitDecreasing(job))).toBe(figure('BFD'));
    const { opened, bounds } = packBins(job, PACK_STEPS);
    expect(bounds.proven).toBeLessThanOrEqual(await boundByHighs(widths, capacity));
    if (!expected.includes('OPT')) {
      // The row of 146 units names no optimum: it lies between its bound and what best fit finds, and the solver proves that fewer than ours cannot be.
      expect(opened).toBe(await boundByHighs(widths, capacity));
      expect(opened).toBeGreaterThanOrEqual(figure('L2'));
      expect(opened).toBeLessThanOrEqual(figure('BFD'));
      return;
    }
    expect(opened).toBe(figure('OPT'));
    expect(fewestBins(widths, capacity)).toBe(figure('OPT'));
    expect(await fewestByHighs(widths, capacity)).toBe(figure('OPT'));
  });

  // Mixes of a few wide modes, as a rig of moving lights has them: L2 is far below what can be, and fractions of universes prove the plan best.
  it.each([
    [112, 135, 170, 180],
    [150, 180, 200, 220, 240],
    [72, 112, 135, 170, 180],
    [100, 130, 140, 180, 210],
    [128, 129, 170, 171],
  ])('[PL22] 2,000 units of %i, %i, %i, %i …: as few universes as HiGHS proves are needed', async (...kinds) => {
    const rng = seededRng(11);
    const widths = Array.from({ length: 2000 }, () => rng.pick(kinds));
    const { opened, bounds } = packBins({ widths, rooms: [], capacity: 512 }, PACK_STEPS);
    const proven = await boundByHighs(widths, 512);
    expect(bounds.l2).toBeLessThan(proven);
    expect(bounds.proven).toBe(proven);
    expect(opened).toBe(proven);
  });

  it('has its rows', () => expect(rows).toHaveLength(17));
});
