import { type Bin, type Budget, emptyBin, type PackJob, put } from './bin.ts';
import { FullestSum } from './fullest-sum.ts';

/**
 * Fills one bin after another as full as can be, rooms first, the widest that is left always among what goes in. Undefined
 * when the budget ends on the way. Source: J. Gupta, J. Ho, minimum bin slack (1999), with exact sums.
 */
export function fillOneByOne({ widths, rooms, capacity }: PackJob, budget: Budget): Bin[] | undefined {
  const stock = stockOf(widths);
  const sums = new FullestSum(capacity);
  const bins = rooms.map((room) => emptyBin(room, true));
  // The smallest rooms first: what fits there fits elsewhere, and not the other way round.
  for (const bin of [...bins].sort((a, b) => a.capacity - b.capacity)) fill(bin, stock, sums, budget);
  while (stock.items > 0) {
    if (budget.steps <= 0) return undefined;
    const bin = emptyBin(capacity, false);
    fill(bin, stock, sums, budget);
    bins.push(bin);
  }
  return bins;
}

/** What is still to be packed, by width, the widest first. */
interface Stock {
  readonly widths: readonly number[];
  readonly counts: number[];
  items: number;
}

function stockOf(widths: readonly number[]): Stock {
  const counts = new Map<number, number>();
  for (const width of widths) counts.set(width, (counts.get(width) ?? 0) + 1);
  const classes = [...counts.keys()].sort((a, b) => b - a);
  return { widths: classes, counts: classes.map((width) => counts.get(width) ?? 0), items: widths.length };
}

function fill(bin: Bin, stock: Stock, sums: FullestSum, budget: Budget): void {
  const widest = stock.widths.findIndex((width, at) => width <= bin.left && (stock.counts[at] as number) > 0);
  if (widest === -1) return;
  move(bin, stock, widest, 1);
  const picked = sums.pick(stock.widths, stock.counts, bin.left, budget);
  for (const [at, count] of picked.entries()) if (count > 0) move(bin, stock, at, count);
}

function move(bin: Bin, stock: Stock, at: number, count: number): void {
  for (let i = 0; i < count; i++) put(bin, stock.widths[at] as number);
  stock.counts[at] = (stock.counts[at] as number) - count;
  stock.items -= count;
}
