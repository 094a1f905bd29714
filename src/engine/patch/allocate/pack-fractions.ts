import type { Budget } from './bin.ts';

/** The best packing there could be if bins might be taken in fractions. */
export interface Fractions {
  /** No packing takes fewer bins. */
  readonly bound: number;
  /** The bins of it that are whole, each as the widths in it: some of all the widths. */
  readonly whole: readonly (readonly number[])[];
}

/** With more widths that differ than this the sums get too large. */
const CLASSES = 80;

/**
 * Packs widths into fractions of bins by column generation: a way to fill one bin is only made when it is worth more than what is there.
 * The bound is computed in whole numbers from the last prices, so that it holds wherever it stops. Undefined with too many different
 * widths. Source: P. Gilmore, R. Gomory, the cutting-stock problem (1961); bound at any time: A. Farley (1990). [PL22]
 */
export function packFractions(widths: readonly number[], capacity: number, budget: Budget): Fractions | undefined {
  const counts = new Map<number, number>();
  for (const width of widths) counts.set(width, (counts.get(width) ?? 0) + 1);
  const classes = [...counts.keys()].sort((a, b) => b - a);
  if (classes.length === 0 || classes.length > CLASSES || (classes[0] as number) > capacity) return undefined;
  const wanted = classes.map((width) => counts.get(width) ?? 0);
  const basis = new Basis(classes, wanted, capacity);
  while (budget.steps > 0) {
    budget.steps -= classes.length * (2 * capacity + 8 * classes.length);
    const { pattern, worth } = dearest(classes, basis.prices(), capacity);
    if (worth <= 1 + TINY) break;
    basis.enter(pattern);
  }
  return { bound: boundOf({ classes, wanted, capacity }, basis.prices()), whole: wholeOf(basis, classes, wanted) };
}

const TINY = 1e-9;

/** How many of each class lie in a bin. */
type Pattern = readonly number[];

/** As many ways to fill a bin as there are classes, and how often each is used, so that every class is packed exactly. */
class Basis {
  readonly patterns: Pattern[];
  readonly used: number[];
  /** Rows of the inverse of the matrix whose columns are the patterns. */
  readonly #inverse: Float64Array[];

  constructor(classes: readonly number[], wanted: readonly number[], capacity: number) {
    const most = classes.map((width) => Math.floor(capacity / width));
    this.patterns = most.map((count, at) => classes.map((_, place) => (place === at ? count : 0)));
    this.used = most.map((count, at) => (wanted[at] as number) / count);
    this.#inverse = most.map((count, at) => new Float64Array(classes.length).fill(1 / count, at, at + 1));
  }

  /** What one of each class is worth, in bins. */
  prices(): readonly number[] {
    return this.patterns.map((_, place) => this.#inverse.reduce((total, row) => total + (row[place] as number), 0));
  }

  /** Takes a pattern in, for the first that is used up by it. */
  enter(pattern: Pattern): void {
    const needs = this.#inverse.map((row) =>
      pattern.reduce((total, count, place) => total + count * (row[place] as number), 0),
    );
    const out = firstUsedUp(this.used, needs);
    const pivot = this.#inverse[out] as Float64Array;
    const need = needs[out] as number;
    const share = (this.used[out] as number) / need;
    for (let place = 0; place < pivot.length; place++) pivot[place] = (pivot[place] as number) / need;
    for (const [at, row] of this.#inverse.entries()) {
      if (at === out) continue;
      const by = needs[at] as number;
      this.used[at] = (this.used[at] as number) - share * by;
      if (by === 0) continue;
      for (let place = 0; place < row.length; place++)
        row[place] = (row[place] as number) - by * (pivot[place] as number);
    }
    this.used[out] = share;
    this.patterns[out] = pattern;
  }
}

/** Of the patterns that the new one replaces in part, the first of which nothing is left. */
function firstUsedUp(used: readonly number[], needs: readonly number[]): number {
  let out = -1;
  let least = Number.POSITIVE_INFINITY;
  for (const [at, need] of needs.entries()) {
    if (need <= TINY) continue;
    const lasts = (used[at] as number) / need;
    if (lasts < least - TINY) {
      least = lasts;
      out = at;
    }
  }
  if (out === -1) throw new Error(`no pattern gives way to one that needs ${needs.join(' ')}`);
  return out;
}

/** The bin that is worth most at these prices. */
function dearest(classes: readonly number[], prices: readonly number[], capacity: number) {
  const best = new Float64Array(capacity + 1);
  const by = new Int32Array(capacity + 1).fill(-1);
  for (let sum = 1; sum <= capacity; sum++) {
    let most = best[sum - 1] as number;
    for (let at = 0; at < classes.length; at++) {
      const under = sum - (classes[at] as number);
      if (under < 0) continue;
      const worth = (best[under] as number) + (prices[at] as number);
      if (worth > most) {
        most = worth;
        by[sum] = at;
      }
    }
    best[sum] = most;
  }
  const pattern = classes.map(() => 0);
  for (let sum = capacity; sum > 0; ) {
    const at = by[sum] as number;
    if (at >= 0) pattern[at] = (pattern[at] as number) + 1;
    sum -= at >= 0 ? (classes[at] as number) : 1;
  }
  return { pattern, worth: best[capacity] as number };
}

interface Demand {
  readonly classes: readonly number[];
  readonly wanted: readonly number[];
  readonly capacity: number;
}

/** What all widths are worth, by what a bin can be worth at most: at any prices that many bins are needed. In whole numbers, so that it is exact. */
function boundOf({ classes, wanted, capacity }: Demand, prices: readonly number[]): number {
  const whole = prices.map((price) => Math.floor(Math.max(0, price) * 2 ** 20));
  const { worth } = dearest(classes, whole, capacity);
  const all = wanted.reduce((total, count, at) => total + count * (whole[at] as number), 0);
  return worth === 0 ? 0 : Math.ceil(all / worth);
}

function wholeOf({ patterns, used }: Basis, classes: readonly number[], wanted: readonly number[]): number[][] {
  const left = [...wanted];
  return patterns.flatMap((pattern, at) => {
    const most = pattern.reduce(
      (low, count, place) => (count === 0 ? low : Math.min(low, Math.floor((left[place] as number) / count))),
      Math.max(0, Math.floor((used[at] as number) + TINY)),
    );
    for (const [place, count] of pattern.entries()) left[place] = (left[place] as number) - most * count;
    return Array.from({ length: most }, () =>
      pattern.flatMap((count, place) => new Array<number>(count).fill(classes[place] as number)),
    );
  });
}
