/** For a width that lies in no bin. */
export const NOWHERE = -1;

/**
 * Picks single widths that fill a room as far as can be, by the sums that some of them reach: one bit for each sum, and a
 * row of bits after each width, from which the pick is read back.
 */
export class FullestPick {
  readonly #words: number;
  #rows: Uint32Array;

  constructor(capacity: number) {
    this.#words = (capacity >>> 5) + 1;
    this.#rows = new Uint32Array(this.#words * 64);
  }

  /** Marks in `owners` as `owner` the widths picked of those that are nowhere; answers what they come to. */
  pick(widths: readonly number[], owners: Int16Array, room: number, owner: number): number {
    const words = this.#words;
    this.#grow(widths.length + 1);
    const rows = this.#rows;
    rows.fill(0, 0, words);
    rows[0] = 1;
    let reached = 0;
    for (; reached < widths.length; reached++) {
      const from = reached * words;
      if (isSet(rows, from, room)) break;
      const isFree = owners[reached] === NOWHERE && (widths[reached] as number) <= room;
      addShifted(rows, from, words, isFree ? (widths[reached] as number) : 0);
    }
    const best = this.#highest(reached * words, room);
    this.#read(widths, owners, { reached, best, owner });
    return best;
  }

  #grow(rows: number): void {
    if (this.#rows.length < rows * this.#words) this.#rows = new Uint32Array(rows * this.#words * 2);
  }

  #highest(row: number, room: number): number {
    let sum = room;
    while (!isSet(this.#rows, row, sum)) sum -= 1;
    return sum;
  }

  /** Goes back from the best sum: a width was needed where the row before it does not have the sum. */
  #read(widths: readonly number[], owners: Int16Array, { reached, best, owner }: Read): void {
    let sum = best;
    for (let at = reached - 1; sum > 0; at--) {
      if (isSet(this.#rows, at * this.#words, sum)) continue;
      owners[at] = owner;
      sum -= widths[at] as number;
    }
  }
}

interface Read {
  readonly reached: number;
  readonly best: number;
  readonly owner: number;
}

const isSet = (rows: Uint32Array, row: number, sum: number) =>
  (((rows[row + (sum >>> 5)] as number) >>> (sum & 31)) & 1) === 1;

/** Writes the row after `from`: what it has, and the same `width` higher. */
function addShifted(rows: Uint32Array, from: number, words: number, width: number): void {
  const to = from + words;
  const whole = width >>> 5;
  const bits = width & 31;
  for (let word = 0; word < words; word++) {
    const source = from + word - whole;
    let moved = source >= from ? (rows[source] as number) << bits : 0;
    if (bits > 0 && source - 1 >= from) moved |= (rows[source - 1] as number) >>> (32 - bits);
    rows[to + word] = (rows[from + word] as number) | moved;
  }
}
