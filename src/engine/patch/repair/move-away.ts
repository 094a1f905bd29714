import { ok, type Result, refuse } from '#base/result.ts';
import type { Claim } from '../../address/claim.ts';
import type { OccupancyIndex } from '../../address/occupancy-index.ts';
import { type Absolute, absolute, type Universe, universeOf } from '../../model/address.ts';
import type { PlanRefusal } from '../plan-refusal.ts';
import { Room } from '../room.ts';
import type { Standing } from './standing.ts';

export interface MovedBreak {
  /** 1-based. */
  readonly part: number;
  readonly from: Absolute;
  readonly to: Absolute;
}

/** A party and where those of its breaks go that are in the way. */
export interface Moved {
  readonly standing: Standing;
  readonly breaks: readonly MovedBreak[];
}

/**
 * Finds room for what has to go. A break that is in nobody's way stays, though another of its unit goes. The widest are
 * placed first; each goes to the nearest room of its universe, else of the nearest universe in use, else to a new one. [PL23]
 */
export function moveAway(going: readonly Standing[], index: OccupancyIndex): Result<readonly Moved[], PlanRefusal> {
  const moving = new Set(going.flatMap(({ fixtures }) => fixtures.map(({ id }) => id)));
  const room = new Room(index, (seat) => moving.has(seat.fixture));
  const used = index.universes();
  const inTheWay: { readonly standing: Standing; readonly claim: Claim; readonly at: number }[] = [];
  for (const [at, standing] of going.entries()) {
    for (const claim of standing.claims) if (!staysPut(room, claim)) inTheWay.push({ standing, claim, at });
  }
  inTheWay.sort((a, b) => slotsOf(b.claim) - slotsOf(a.claim) || a.at - b.at || a.claim.part - b.claim.part);
  const moved = new Map<Standing, MovedBreak[]>();
  for (const { standing, claim } of inTheWay) {
    const from = absolute(claim.universe, claim.first);
    const slots = slotsOf(claim);
    const to = nearestRoom(room, used, from, slots);
    if (to === undefined) return refuse({ code: 'no-room', fixture: standing.lead.id, slots });
    room.take(to, slots);
    moved.set(standing, [...(moved.get(standing) ?? []), { part: claim.part, from, to }]);
  }
  const byPart = (a: MovedBreak, b: MovedBreak) => a.part - b.part;
  return ok(
    going.flatMap((standing) => {
      const breaks = moved.get(standing);
      return breaks === undefined ? [] : [{ standing, breaks: breaks.sort(byPart) }];
    }),
  );
}

const slotsOf = ({ first, last, over }: Claim) => last - first + 1 + over;

function staysPut(room: Room, claim: Claim): boolean {
  const { universe, first, over } = claim;
  const slots = slotsOf(claim);
  if (over > 0 || room.firstIn(universe, first, slots) !== first) return false;
  room.take(absolute(universe, first), slots);
  return true;
}

function nearestRoom(room: Room, used: readonly Universe[], near: Absolute, slots: number): Absolute | undefined {
  const here = room.nearest(near, slots);
  if (here !== undefined) return here;
  for (const universe of byDistance(used, universeOf(near))) {
    const first = room.firstIn(universe, 1, slots);
    if (first !== undefined) return absolute(universe, first);
  }
  return room.nearestAnywhere(near, slots);
}

/** The others of an ascending list by their distance from `from`; of two as near, the higher first. */
function* byDistance(universes: readonly Universe[], from: Universe): Generator<Universe> {
  let above = universes.findIndex((universe) => universe > from);
  if (above === -1) above = universes.length;
  let below = above - 1;
  if (universes[below] === from) below -= 1;
  while (above < universes.length || below >= 0) {
    const up = universes[above];
    const down = universes[below];
    if (up !== undefined && (down === undefined || up - from <= from - down)) {
      yield up;
      above += 1;
    } else if (down !== undefined) {
      yield down;
      below -= 1;
    }
  }
}
