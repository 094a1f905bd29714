/** A source of randomness that is handed in. `next()` is in [0, 1). */
export interface Rng {
  next(): number;
  /** A whole number in [0, below). */
  int(below: number): number;
  pick<T>(items: readonly T[]): T;
}

/** A seeded generator (mulberry32): the same seed gives the same numbers on every machine. */
export function seededRng(seed: number): Rng {
  let state = seed >>> 0;
  const next = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  const int = (below: number) => Math.floor(next() * below);
  return { next, int, pick: (items) => items[int(items.length)] as (typeof items)[number] };
}
