import { type Bin, emptyBin, type PackJob, put } from './bin.ts';

/**
 * Best-fit-decreasing: the widest first, each where it leaves the least room, a new bin only when it fits nowhere.
 * Source: S. Martello, P. Toth, Knapsack Problems (1990), chapter 8. [PL22]
 */
export function bestFitDecreasing({ widths, rooms, capacity }: PackJob): Bin[] {
  const bins = rooms.map((room) => emptyBin(room, true));
  const byLeft: Bin[][] = Array.from({ length: capacity + 1 }, () => []);
  for (const bin of bins) byLeft[bin.left]?.push(bin);
  for (const width of [...widths].sort((a, b) => b - a)) {
    const bin = tightest(byLeft, width) ?? opened(bins, capacity);
    put(bin, width);
    byLeft[bin.left]?.push(bin);
  }
  return bins;
}

function tightest(byLeft: readonly Bin[][], width: number): Bin | undefined {
  for (let left = width; left < byLeft.length; left++) {
    const bin = byLeft[left]?.pop();
    if (bin !== undefined) return bin;
  }
  return undefined;
}

function opened(bins: Bin[], capacity: number): Bin {
  const bin = emptyBin(capacity, false);
  bins.push(bin);
  return bin;
}
