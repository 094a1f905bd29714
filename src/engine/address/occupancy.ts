import { rowsOf } from '#base/table.ts';
import { SLOTS, type Slot, type Universe } from '../model/address.ts';
import type { SlotRun } from '../model/finding.ts';
import type { FixtureId } from '../model/ids.ts';
import type { Rig } from '../model/rig.ts';
import { slotRuns } from './claim.ts';

/** One claim as a ribbon draws it: break `part` (1-based) of a fixture sits on slots `first` to `last`; `over` do not fit. */
export interface Seat {
  readonly fixture: FixtureId;
  readonly part: number;
  readonly first: Slot;
  readonly last: Slot;
  readonly over: number;
}

/** Who sits where in a universe: seats by first slot, and the maximal free runs between them. Seats may overlap. */
export interface Occupancy {
  readonly universe: Universe;
  readonly seats: readonly Seat[];
  readonly free: readonly SlotRun[];
  readonly freeSlots: number;
}

/**
 * The occupancy of one universe, by a look at every fixture. A view that repaints at each edit asks an `OccupancyIndex`.
 */
export function occupancyOf(rig: Rig, universe: Universe): Occupancy {
  const seats: Seat[] = [];
  for (const fixture of rowsOf(rig.fixtures)) {
    for (const claim of slotRuns(rig, fixture)) {
      if (claim.universe !== universe) continue;
      const { part, first, last, over } = claim;
      seats.push({ fixture: fixture.id, part, first, last, over });
    }
  }
  return occupancyFrom(universe, seats);
}

/** Universes in which some fixture claims a slot, ascending. */
export function universesInUse(rig: Rig): readonly Universe[] {
  const used = new Set<Universe>();
  for (const fixture of rowsOf(rig.fixtures)) for (const claim of slotRuns(rig, fixture)) used.add(claim.universe);
  return [...used].sort((a, b) => a - b);
}

/** Sorts `seats` in place and finds the room between them. */
export function occupancyFrom(universe: Universe, seats: Seat[]): Occupancy {
  seats.sort(compareSeats);
  const free: SlotRun[] = [];
  let next = 1;
  let freeSlots = 0;
  const close = (end: number) => {
    if (end < next) return;
    free.push({ universe, first: next as Slot, last: end as Slot });
    freeSlots += end - next + 1;
  };
  for (const seat of seats) {
    close(seat.first - 1);
    next = Math.max(next, seat.last + 1);
  }
  close(SLOTS);
  return Object.freeze({ universe, seats: Object.freeze(seats), free: Object.freeze(free), freeSlots });
}

function compareSeats(a: Seat, b: Seat): number {
  return (
    a.first - b.first ||
    a.last - b.last ||
    (a.fixture < b.fixture ? -1 : a.fixture > b.fixture ? 1 : 0) ||
    a.part - b.part
  );
}
