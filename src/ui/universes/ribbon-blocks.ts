import type { Occupancy, Seat } from '#engine/address/occupancy.ts';
import { SLOTS } from '#engine/model/address.ts';
import type { Fixture } from '#engine/model/fixture.ts';
import { type FixtureId, foldName } from '#engine/model/ids.ts';
import { blockKey } from './block-cursor.ts';

/** One fixture's slots on a ribbon, in percent of its length. */
export interface Block {
  readonly key: string;
  readonly seat: Seat;
  readonly left: number;
  readonly width: number;
}

/** A run of slots that more than one seat claims, in percent. */
export interface Clash {
  readonly left: number;
  readonly width: number;
}

const percent = (slots: number) => (100 * slots) / SLOTS;

export function blocksOf({ seats }: Occupancy): readonly Block[] {
  return seats.map((seat) => ({
    key: blockKey(seat),
    seat,
    left: percent(seat.first - 1),
    width: percent(seat.last - seat.first + 1),
  }));
}

/** Where seats lie on each other, unless all of them act as one: those share their slots on purpose. */
export function clashesOf({ seats }: Occupancy, actAsOne: (a: FixtureId, b: FixtureId) => boolean): readonly Clash[] {
  const clashes: { first: number; last: number }[] = [];
  let widest: Seat | undefined;
  for (const seat of seats) {
    const meets = widest !== undefined && seat.first <= widest.last && !actAsOne(widest.fixture, seat.fixture);
    if (meets && widest !== undefined) join(clashes, seat.first, Math.min(seat.last, widest.last));
    if (widest === undefined || seat.last > widest.last) widest = seat;
  }
  return clashes.map(({ first, last }) => ({ left: percent(first - 1), width: percent(last - first + 1) }));
}

function join(clashes: { first: number; last: number }[], first: number, last: number): void {
  const before = clashes.at(-1);
  if (before !== undefined && first <= before.last + 1) before.last = Math.max(before.last, last);
  else clashes.push({ first, last });
}

/** Which of six grounds a fixture's block has: the same for every unit of a type. */
export function groundOf({ type }: Pick<Fixture, 'type'>): number {
  let hash = 7;
  for (const letter of foldName(type)) hash = (hash * 31 + (letter.codePointAt(0) ?? 0)) % 9973;
  return hash % 6;
}
