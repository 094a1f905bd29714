import { type Bin, type Budget, emptyBin, type PackJob, put } from './bin.ts';

/**
 * Looks for a packing that opens no more than `most` bins, by filling bin after bin in every way that wastes no more than
 * may be wasted: the exact search for a few dozen widths. Undefined when none was found: there may be
 * one if the budget ended, or if there are more choices one within the other than it follows.
 */
export function fillExactly({ widths, rooms, capacity }: PackJob, most: number, budget: Budget): Bin[] | undefined {
  const search = new Search(widths, budget);
  const capacities = [...rooms, ...new Array<number>(most).fill(capacity)];
  const waste = sum(capacities) - sum(widths);
  if (waste < 0 || !search.fills(capacities, 0, rooms.length, waste)) return undefined;
  return capacities.map((size, at) => {
    const bin = emptyBin(size, at < rooms.length);
    for (const width of search.found[at] ?? []) put(bin, width);
    return bin;
  });
}

const sum = (numbers: readonly number[]) => numbers.reduce((total, number) => total + number, 0);

/** Choices within choices: more than this could be more than a call stack holds. */
const DEEPEST = 1500;

class Search {
  readonly found: number[][] = [];
  /** Widths that differ, the widest first, and how many of each are not packed. */
  readonly #widths: number[];
  readonly #counts: number[];
  readonly #budget: Budget;
  #left: number;
  #depth = 0;

  constructor(widths: readonly number[], budget: Budget) {
    const counts = new Map<number, number>();
    for (const width of widths) counts.set(width, (counts.get(width) ?? 0) + 1);
    this.#widths = [...counts.keys()].sort((a, b) => b - a);
    this.#counts = this.#widths.map((width) => counts.get(width) ?? 0);
    this.#budget = budget;
    this.#left = widths.length;
  }

  /** Fills bin `at` and all after it; past the rooms, the widest that is left lies in the next bin. */
  fills(capacities: readonly number[], at: number, rooms: number, waste: number): boolean {
    if (this.#left === 0) return true;
    const capacity = capacities[at];
    if (capacity === undefined) return false;
    const next = (wasted: number) => this.fills(capacities, at + 1, rooms, wasted);
    this.found[at] = [];
    if (at < rooms) return this.#choose(at, 0, capacity, waste, next);
    const widest = this.#counts.findIndex((count) => count > 0);
    const width = this.#widths[widest] as number;
    if (width > capacity) return false;
    this.#take(at, widest, 1);
    if (this.#choose(at, widest, capacity - width, waste, next)) return true;
    this.#take(at, widest, -1);
    return false;
  }

  /** Goes through what may lie beside it, from class `from` on: as many of the wide ones as fit first. */
  #choose(at: number, from: number, left: number, waste: number, next: (wasted: number) => boolean): boolean {
    this.#budget.steps -= 20;
    if (this.#budget.steps <= 0 || this.#depth >= DEEPEST) return false;
    this.#depth += 1;
    const found = this.#chooseFrom(at, from, left, waste, next);
    this.#depth -= 1;
    return found;
  }

  #chooseFrom(at: number, from: number, left: number, waste: number, next: (wasted: number) => boolean): boolean {
    let place = from;
    while (place < this.#widths.length && !this.#fits(place, left)) place += 1;
    if (place === this.#widths.length) return left <= waste && next(waste - left);
    const width = this.#widths[place] as number;
    const most = Math.min(this.#counts[place] as number, Math.floor(left / width));
    for (let count = most; count >= 0; count--) {
      this.#take(at, place, count);
      if (this.#choose(at, place + 1, left - count * width, waste, next)) return true;
      this.#take(at, place, -count);
    }
    return false;
  }

  #fits(place: number, left: number): boolean {
    return (this.#counts[place] as number) > 0 && (this.#widths[place] as number) <= left;
  }

  /** Puts `count` of a class into a bin; a negative count takes back those put in last. */
  #take(at: number, place: number, count: number): void {
    const bin = this.found[at] as number[];
    for (let i = 0; i < count; i++) bin.push(this.#widths[place] as number);
    if (count < 0) bin.length += count;
    this.#counts[place] = (this.#counts[place] as number) - count;
    this.#left -= count;
  }
}
