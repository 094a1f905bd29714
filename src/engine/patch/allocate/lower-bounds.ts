import type { Budget, PackJob } from './bin.ts';
import { type Fractions, packFractions } from './pack-fractions.ts';

export interface LowerBounds {
  /** What the widths come to, added up. */
  readonly l1: number;
  /** At least `l1`: counts in what cannot stand beside each other. */
  readonly l2: number;
}

/** With the best that is proven, by these or by fractions of bins. */
export interface ProvenBounds extends LowerBounds {
  readonly proven: number;
}

/**
 * No packing of `widths` into bins of `capacity` takes fewer bins than these. Every width is at most the capacity.
 * Source: S. Martello, P. Toth, Knapsack Problems (1990), chapter 8: L1 and L2. [PL22]
 */
export function lowerBounds(widths: readonly number[], capacity: number): LowerBounds {
  const sorted = widths.filter((width) => width > 0).sort((a, b) => b - a);
  const sums = [0];
  for (const width of sorted) sums.push((sums[sums.length - 1] as number) + width);
  const half = countWhile(sorted, (width) => width * 2 > capacity);
  let l2 = boundAt(sorted, sums, { capacity, half, least: 0 });
  for (let at = half; at < sorted.length; at++) {
    const least = sorted[at] as number;
    if (least !== sorted[at - 1]) l2 = Math.max(l2, boundAt(sorted, sums, { capacity, half, least }));
  }
  return { l1: Math.ceil((sums[sorted.length] as number) / capacity), l2 };
}

/**
 * The same for a packing that first has `rooms`, parts of bins that are in use already: how many bins it takes beside those.
 * A room of n is a bin in which the rest is taken, so it counts as a bin and a width.
 */
export function boundsBeside(widths: readonly number[], rooms: readonly number[], capacity: number): LowerBounds {
  const { all, useful } = withRooms(widths, rooms, capacity);
  const { l1, l2 } = lowerBounds(all, capacity);
  return { l1: Math.max(0, l1 - useful), l2: Math.max(0, l2 - useful) };
}

/** The same by fractions of bins, within a budget; 0 where these are not known. */
export function fractionsBeside({ widths, rooms, capacity }: PackJob, budget: Budget): Fractions {
  const { all, useful } = withRooms(widths, rooms, capacity);
  const fractions = packFractions(all, capacity, budget);
  if (fractions === undefined) return { bound: 0, whole: [] };
  return { bound: Math.max(0, fractions.bound - useful), whole: useful === 0 ? fractions.whole : [] };
}

function withRooms(widths: readonly number[], rooms: readonly number[], capacity: number) {
  const least = widths.reduce((low, width) => Math.min(low, width), capacity);
  const useful = rooms.filter((room) => room >= least);
  const beside = useful.map((room) => capacity - room).filter((width) => width > 0);
  return { all: [...widths, ...beside], useful: useful.length };
}

interface At {
  readonly capacity: number;
  /** How many widths are above half the capacity. */
  readonly half: number;
  readonly least: number;
}

/** The bound that looks only at widths of `least` and more. */
function boundAt(sorted: readonly number[], sums: readonly number[], { capacity, half, least }: At): number {
  const alone = countWhile(sorted, (width) => width > capacity - least);
  const small = countWhile(sorted, (width) => width >= least);
  const sum = (from: number, to: number) => (sums[to] as number) - (sums[from] as number);
  const spare = (half - alone) * capacity - sum(alone, half);
  return half + Math.max(0, Math.ceil((sum(half, Math.max(half, small)) - spare) / capacity));
}

/** How many of a sorted list, from its head, hold; they come before all that do not. */
function countWhile(sorted: readonly number[], holds: (width: number) => boolean): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (holds(sorted[middle] as number)) low = middle + 1;
    else high = middle;
  }
  return low;
}
