import type { Occupancy, Seat } from '#engine/address/occupancy.ts';
import type { Universe } from '#engine/model/address.ts';

/** The block that the cursor is on. */
export interface BlockCursor {
  readonly universe: Universe;
  readonly key: string;
}

export interface Ribbons {
  readonly universes: readonly Universe[];
  readonly of: (universe: Universe) => Occupancy;
}

export const blockKey = ({ fixture, part }: Pick<Seat, 'fixture' | 'part'>) => `${fixture} ${part}`;

/** The seat the cursor is on; where it has gone, the first of its universe, or else the first of all. */
export function cursorSeat(
  cursor: BlockCursor | undefined,
  { universes, of }: Ribbons,
): { readonly universe: Universe; readonly seat: Seat } | undefined {
  if (cursor !== undefined && universes.includes(cursor.universe)) {
    const { seats } = of(cursor.universe);
    const seat = seats.find((each) => blockKey(each) === cursor.key) ?? seats[0];
    if (seat !== undefined) return { universe: cursor.universe, seat };
  }
  for (const universe of universes) {
    const [seat] = of(universe).seats;
    if (seat !== undefined) return { universe, seat };
  }
  return undefined;
}

/** The block that a key goes to: along the ribbon, to its ends, or to the nearest one of the next ribbon that has any. */
export function blockOfKey(key: string, cursor: BlockCursor, ribbons: Ribbons): BlockCursor | undefined {
  const here = cursorSeat(cursor, ribbons);
  if (here === undefined) return undefined;
  const { seats } = ribbons.of(here.universe);
  const at = seats.indexOf(here.seat);
  const to: Readonly<Record<string, number>> = {
    ArrowLeft: Math.max(0, at - 1),
    ArrowRight: Math.min(seats.length - 1, at + 1),
    Home: 0,
    End: seats.length - 1,
  };
  const along = to[key];
  if (along !== undefined) {
    const seat = seats[along] ?? here.seat;
    return { universe: here.universe, key: blockKey(seat) };
  }
  if (key !== 'ArrowUp' && key !== 'ArrowDown') return undefined;
  return across(here.universe, here.seat.first, key === 'ArrowUp' ? -1 : 1, ribbons) ?? cursor;
}

function across(from: Universe, slot: number, step: 1 | -1, { universes, of }: Ribbons): BlockCursor | undefined {
  for (let at = universes.indexOf(from) + step; at >= 0 && at < universes.length; at += step) {
    const universe = universes[at];
    if (universe === undefined) break;
    const { seats } = of(universe);
    const [first] = seats;
    if (first === undefined) continue;
    const nearest = seats.reduce((a, b) => (Math.abs(b.first - slot) < Math.abs(a.first - slot) ? b : a), first);
    return { universe, key: blockKey(nearest) };
  }
  return undefined;
}
