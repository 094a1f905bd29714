import { ok, type Result, refuse } from '#base/result.ts';
import { LAST_UNIVERSE, type Universe } from '../model/address.ts';

/** Universes `first` to `last`, both counted in. */
export interface UniverseRange {
  readonly first: Universe;
  readonly last: Universe;
}

type RangesRefusal = 'not-universes' | 'universe-out-of-range';

/** Reads `1-4, 7`, in any order, with white space anywhere; nothing but white space is no range. [AD12] */
export function parseUniverseRanges(text: string): Result<readonly UniverseRange[], RangesRefusal> {
  const ranges: UniverseRange[] = [];
  for (const piece of text.split(/[,;]/)) {
    if (piece.trim() === '') continue;
    const match = /^\s*(\d{1,9})\s*(?:[-–]\s*(\d{1,9})\s*)?$/.exec(piece);
    if (!match) return refuse('not-universes');
    const ends = [Number(match[1]), Number(match[2] ?? match[1])].sort((a, b) => a - b);
    const [first = 0, last = 0] = ends;
    if (first < 1 || last > LAST_UNIVERSE) return refuse('universe-out-of-range');
    ranges.push({ first: first as Universe, last: last as Universe });
  }
  return ok(ranges);
}

/** The universes of `allowed` (all there are, when it is empty) without those of `barred`: apart, ascending. [AD12] */
export function openRanges(
  allowed: readonly UniverseRange[],
  barred: readonly UniverseRange[],
): readonly UniverseRange[] {
  let open = joined(allowed.length > 0 ? allowed : [{ first: 1 as Universe, last: LAST_UNIVERSE as Universe }]);
  for (const { first, last } of barred) {
    open = open.flatMap((range) => {
      if (last < range.first || first > range.last) return [range];
      const below = { first: range.first, last: (first - 1) as Universe };
      const above = { first: (last + 1) as Universe, last: range.last };
      return [below, above].filter((piece) => piece.first <= piece.last);
    });
  }
  return open;
}

function joined(ranges: readonly UniverseRange[]): readonly UniverseRange[] {
  const apart: UniverseRange[] = [];
  for (const range of [...ranges].sort((a, b) => a.first - b.first)) {
    const before = apart[apart.length - 1];
    if (before === undefined || range.first > before.last + 1) apart.push(range);
    else apart[apart.length - 1] = { first: before.first, last: Math.max(before.last, range.last) as Universe };
  }
  return apart;
}

export function* universesIn(ranges: readonly UniverseRange[]): Generator<Universe> {
  for (const { first, last } of ranges) for (let at: number = first; at <= last; at++) yield at as Universe;
}
