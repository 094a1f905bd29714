/** One run of slots, what keeping it is worth, and whose it is. */
export interface Piece {
  readonly first: number;
  readonly last: number;
  readonly weight: number;
  readonly at: number;
}

/**
 * The heaviest pieces no two of which meet, by `at`, ascending by slot. Of sets as heavy the one that ends earlier.
 * Source: J. Kleinberg, É. Tardos, Algorithm Design (2005), section 6.1, weighted interval scheduling. [PL24]
 */
export function heaviestApart(pieces: readonly Piece[]): readonly number[] {
  const sorted = [...pieces].sort((a, b) => a.last - b.last || a.first - b.first || a.at - b.at);
  const before = sorted.map(({ first }) => countEnding(sorted, first));
  const best = [0];
  for (const [at, { weight }] of sorted.entries()) {
    best.push(Math.max(best[at] as number, weight + (best[before[at] as number] as number)));
  }
  const chosen: number[] = [];
  for (let at = sorted.length; at > 0; ) {
    if (best[at] === best[at - 1]) at -= 1;
    else {
      chosen.push((sorted[at - 1] as Piece).at);
      at = before[at - 1] as number;
    }
  }
  return chosen.reverse();
}

/** How many of the pieces, which are sorted by their last slots, end before `first`. */
function countEnding(sorted: readonly Piece[], first: number): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((sorted[middle] as Piece).last < first) low = middle + 1;
    else high = middle;
  }
  return low;
}
