import type { OccupancyIndex } from '../address/occupancy-index.ts';
import { type Absolute, absolute, LAST_UNIVERSE, SLOTS, slotOf, universeOf } from '../model/address.ts';
import type { FixtureId } from '../model/ids.ts';
import { Room } from './room.ts';

export interface RoomQuestion {
  /** Slots per break; the breaks are to lie end to end. */
  readonly footprints: readonly number[];
  readonly near: Absolute;
  /** Fixtures whose own slots count as free: those that are to be moved. */
  readonly moving: readonly FixtureId[];
  /** How many suggestions are wanted at most. */
  readonly most: number;
}

/**
 * A few starts with room, the best first: one per free stretch of the universe of `near`, by distance; then the first
 * room of each of the universes after it. Empty when the slots do not fit into a universe at all. [PL12]
 */
export function freeRoom(index: OccupancyIndex, { footprints, near, moving, most }: RoomQuestion): readonly Absolute[] {
  const length = footprints.reduce((total, footprint) => total + footprint, 0);
  if (length < 1 || length > SLOTS) return [];
  const own = new Set(moving);
  const room = new Room(index, (seat) => own.has(seat.fixture));
  const starts = startsHere(room, near, length);
  starts.sort((a, b) => Math.abs(a - near) - Math.abs(b - near) || a - b);
  for (let universe = universeOf(near) + 1; starts.length < most && universe <= LAST_UNIVERSE; universe++) {
    const start = room.firstIn(universe, 1, length);
    if (start !== undefined) starts.push(absolute(universe, start));
  }
  return starts.slice(0, most);
}

/** The start nearest to `near` in each free stretch of its universe that is long enough. */
function startsHere(room: Room, near: Absolute, length: number): Absolute[] {
  const universe = universeOf(near);
  const starts: Absolute[] = [];
  for (const { first, last } of room.stretches(universe)) {
    if (last - first + 1 < length) continue;
    starts.push(absolute(universe, Math.min(Math.max(slotOf(near), first), last - length + 1)));
  }
  return starts;
}
