import type { Budget } from './bin.ts';

/**
 * Picks, of `counts` widths of each class, those that fill `room` as far as can be: how many of each class. Classes are
 * used in the order given, so that of two as full picks the one is taken that needs fewer of the later classes.
 */
export class FullestSum {
  /** The class by which a sum was first reached, and how many of it: -1 for a sum not reached. */
  readonly #by: Int32Array;
  readonly #used: Int32Array;

  constructor(capacity: number) {
    this.#by = new Int32Array(capacity + 1);
    this.#used = new Int32Array(capacity + 1);
  }

  pick(widths: readonly number[], counts: readonly number[], room: number, budget: Budget): number[] {
    const by = this.#by;
    by.fill(-1, 0, room + 1);
    let best = 0;
    for (let at = 0; at < widths.length && best < room; at++) {
      const width = widths[at] as number;
      const count = counts[at] as number;
      if (count === 0 || width > room) continue;
      budget.steps -= room - width + 1;
      best = Math.max(best, this.#reach(at, width, count, room));
    }
    return this.#read(widths, best);
  }

  /** Marks every sum that up to `count` of one more class reach; answers the highest. */
  #reach(at: number, width: number, count: number, room: number): number {
    const by = this.#by;
    const used = this.#used;
    let best = 0;
    for (let sum = width; sum <= room; sum++) {
      if (by[sum] !== -1) continue;
      const under = sum - width;
      const from = by[under] as number;
      if (under !== 0 && from === -1) continue;
      const before = under !== 0 && from === at ? (used[under] as number) : 0;
      if (before >= count) continue;
      by[sum] = at;
      used[sum] = before + 1;
      best = sum;
    }
    return best;
  }

  #read(widths: readonly number[], sum: number): number[] {
    const picked = new Array<number>(widths.length).fill(0);
    for (let left = sum; left > 0; ) {
      const at = this.#by[left] as number;
      picked[at] = (picked[at] as number) + 1;
      left -= widths[at] as number;
    }
    return picked;
  }
}
