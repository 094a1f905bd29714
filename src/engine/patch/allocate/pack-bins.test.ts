import { describe, expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import { fewestBins } from '#tests/support/exact-packing.ts';
import { bestFitDecreasing } from './best-fit.ts';
import { countOpened, type PackJob } from './bin.ts';
import { boundsBeside, lowerBounds } from './lower-bounds.ts';
import { packBins } from './pack-bins.ts';
import { packFractions } from './pack-fractions.ts';

/** A few widths of a few kinds, so that some are hard: small ones, halves and thirds, or pieces of whole bins. */
function randomWidths(seed: number): number[] {
  const rng = seededRng(seed);
  const kind = rng.int(3);
  const count = 4 + rng.int(9);
  if (kind === 0) return Array.from({ length: count }, () => 1 + rng.int(512));
  if (kind === 1) return Array.from({ length: count }, () => 129 + rng.int(150));
  return Array.from({ length: 3 + rng.int(2) }, () => {
    const first = 100 + rng.int(200);
    const second = 60 + rng.int(100);
    return [first, second, 512 - first - second];
  }).flat();
}

const widthsIn = (bins: readonly { readonly widths: readonly number[] }[]) =>
  bins.flatMap(({ widths }) => widths).sort((a, b) => a - b);

/** Cut short now and then: the bound holds wherever it stops. */
const stepsOf = (seed: number) => (seed % 4 === 0 ? 20_000 : 10_000_000);
const total = (widths: readonly number[]) => widths.reduce((sum, width) => sum + width, 0);

describe('packing', () => {
  it('[PL22] its bounds hold, and it finds the fewest bins of small cases, as an exact search knows them', () => {
    let met = 0;
    for (let seed = 1; seed <= 400; seed++) {
      const widths = randomWidths(seed);
      const fewest = fewestBins(widths, 512);
      if (fewest === undefined) throw new Error(`seed ${seed}: the exact search gave up`);
      const { l1, l2 } = lowerBounds(widths, 512);
      expect(l1, `seed ${seed}`).toBeLessThanOrEqual(l2);
      expect(l2, `seed ${seed}`).toBeLessThanOrEqual(fewest);
      const packing = packBins({ widths, rooms: [], capacity: 512 }, 300_000);
      expect(packing.opened, `seed ${seed}: ${widths}`).toBe(fewest);
      const { bound, whole } = packFractions(widths, 512, { steps: stepsOf(seed) }) ?? { bound: 0, whole: [] };
      expect(bound, `seed ${seed}`).toBeLessThanOrEqual(fewest);
      for (const bin of whole) expect(total(bin), `seed ${seed}`).toBeLessThanOrEqual(512);
      met += Number(l2 === fewest);
    }
    // The bound is no idle one, and does not always say it all.
    expect(met).toBeGreaterThan(200);
    expect(met).toBeLessThan(400);
  });

  it('[PL22] packs every width once, over no bin’s end, and never worse than best fit, whatever the steps', () => {
    for (let seed = 1; seed <= 300; seed++) {
      const rng = seededRng(seed + 7000);
      const capacity = 16 + rng.int(500);
      const widths = Array.from({ length: rng.int(80) }, () => 1 + rng.int(capacity));
      const rooms = Array.from({ length: rng.int(12) }, () => 1 + rng.int(capacity));
      const job: PackJob = { widths, rooms, capacity };
      const packing = packBins(job, rng.pick([0, 1000, 200_000]));
      expect(widthsIn(packing.bins)).toEqual([...widths].sort((a, b) => a - b));
      expect(packing.bins.slice(0, rooms.length).map((bin) => bin.capacity)).toEqual(rooms);
      for (const bin of packing.bins) {
        expect(bin.left).toBe(bin.capacity - bin.widths.reduce((total, width) => total + width, 0));
        expect(bin.left).toBeGreaterThanOrEqual(0);
      }
      expect(packing.opened).toBeLessThanOrEqual(countOpened(bestFitDecreasing(job)));
      expect(packing.opened).toBeGreaterThanOrEqual(boundsBeside(widths, rooms, capacity).l2);
      expect(packing.opened).toBeGreaterThanOrEqual(packing.bounds.proven);
    }
  });

  it('[PL22] uses rooms as well as an exact search does', () => {
    for (let seed = 1; seed <= 150; seed++) {
      const rng = seededRng(seed + 500);
      const widths = Array.from({ length: 3 + rng.int(8) }, () => 60 + rng.int(300));
      const rooms = Array.from({ length: 1 + rng.int(4) }, () => 60 + rng.int(450));
      // A room of n is a universe of which somebody has the rest: those who have it are each in one of their own.
      const job: PackJob = { widths, rooms, capacity: 512 };
      const { opened, bounds } = packBins(job, 400_000);
      expect(opened, `seed ${seed}: ${widths} into ${rooms}`).toBe(fewestBeside(widths, rooms));
      expect(bounds.proven, `seed ${seed}`).toBeLessThanOrEqual(opened);
    }
  });

  /** By trying every bin for every width. */
  function fewestBeside(widths: readonly number[], rooms: readonly number[]): number {
    const left = [...rooms];
    let best = widths.length;
    const place = (at: number): void => {
      if (left.length - rooms.length >= best) return;
      const width = widths[at];
      if (width === undefined) {
        best = left.length - rooms.length;
        return;
      }
      for (const [bin, free] of [...left.entries()]) {
        if (free < width) continue;
        left[bin] = free - width;
        place(at + 1);
        left[bin] = free;
      }
      left.push(512 - width);
      place(at + 1);
      left.pop();
    };
    place(0);
    return best;
  }

  it('[PL22] follows no choice deeper than a call stack holds', () => {
    const widths = Array.from({ length: 190 }, (_, at) => 1 + at);
    expect(packBins({ widths, rooms: [1, 2, 3], capacity: 512 }, 3_000_000).opened).toBeLessThanOrEqual(37);
    const rooms = Array.from({ length: 8000 }, (_, at) => 1 + (at % 90));
    expect(packBins({ widths: widths.slice(100), rooms, capacity: 512 }, 3_000_000).bins).toBeDefined();
  });

  it('[PL22] cuts whole bins to pieces and finds them again, where best fit needs more', () => {
    let better = 0;
    for (let seed = 1; seed <= 40; seed++) {
      const rng = seededRng(seed + 100);
      const widths = Array.from({ length: 8 }, () => {
        const first = 30 + rng.int(300);
        const second = 30 + rng.int(100);
        return [first, second, 512 - first - second];
      }).flat();
      const packing = packBins({ widths, rooms: [], capacity: 512 }, 5_000_000);
      expect(packing.opened, `seed ${seed}`).toBe(8);
      better += Number(packing.bestFit > 8);
    }
    expect(better).toBeGreaterThan(10);
  });

  it('[PL22] a few widths, thousands of them: meets what fractions of bins prove', () => {
    for (let seed = 1; seed <= 30; seed++) {
      const rng = seededRng(seed + 900);
      const kinds = Array.from({ length: 3 + rng.int(5) }, () => 60 + rng.int(200));
      const widths = Array.from({ length: 400 }, () => rng.pick(kinds));
      const { opened, bounds } = packBins({ widths, rooms: [], capacity: 512 }, 20_000_000);
      expect(opened - bounds.proven, `seed ${seed}: ${kinds}`).toBeLessThanOrEqual(1);
      expect(bounds.proven).toBeGreaterThanOrEqual(bounds.l2);
    }
  });
});
