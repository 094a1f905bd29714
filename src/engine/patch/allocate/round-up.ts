import { bestFitDecreasing } from './best-fit.ts';
import { type Bin, type Budget, countOpened, emptyBin, type PackJob, put } from './bin.ts';
import { fewest } from './fewest.ts';
import { fillOneByOne } from './fill-one-by-one.ts';
import type { Fractions } from './pack-fractions.ts';

/** The whole bins of a packing into fractions, and what is left over packed by itself, towards `proven` bins in all. [PL22] */
export function roundUp(job: PackJob, { whole }: Fractions, proven: number, budget: Budget): Bin[] {
  const { capacity, rooms } = job;
  const counts = new Map<number, number>();
  for (const width of job.widths) counts.set(width, (counts.get(width) ?? 0) + 1);
  for (const width of whole.flat()) counts.set(width, (counts.get(width) ?? 0) - 1);
  const widths = [...counts].flatMap(([width, count]) => new Array<number>(count).fill(width));
  const share: Budget = { steps: Math.floor(budget.steps / 3) };
  budget.steps -= share.steps;
  const rest = { widths, rooms, capacity };
  const left = leftOver(rest, proven - whole.length, share);
  budget.steps += Math.max(0, share.steps);
  const bins = whole.map((pattern) => {
    const bin = emptyBin(capacity, false);
    for (const width of pattern) put(bin, width);
    return bin;
  });
  return [...left, ...bins];
}

function leftOver(rest: PackJob, bound: number, budget: Budget): Bin[] {
  let bins = bestFitDecreasing(rest);
  const filled = countOpened(bins) > bound ? fillOneByOne(rest, budget) : undefined;
  if (filled !== undefined && countOpened(filled) < countOpened(bins)) bins = filled;
  const exact = countOpened(bins) > bound ? fewest(rest, Math.max(bound, 0), countOpened(bins), budget) : undefined;
  return exact ?? bins;
}
