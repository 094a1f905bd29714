import { ok, type Result, refuse } from '#base/result.ts';
import { createOccupancy, type OccupancyIndex } from '../address/occupancy-index.ts';
import { type Absolute, absolute, isAbsolute, LAST_UNIVERSE, SLOTS, slotOf, universeOf } from '../model/address.ts';
import type { Edit, Plan } from '../model/edit.ts';
import { modeOf } from '../model/find-mode.ts';
import type { Fixture } from '../model/fixture.ts';
import type { FixtureId } from '../model/ids.ts';
import type { Rig } from '../model/rig.ts';
import { addressEdits, chosen, planOf } from './chosen.ts';
import type { PlanRefusal } from './plan-refusal.ts';
import { Room } from './room.ts';

export interface PlaceRequest {
  /** Placed in this order, at ascending addresses. */
  readonly fixtures: readonly FixtureId[];
  /** Nothing is placed before this address. */
  readonly from: Absolute;
  /** Whether all breaks of a fixture must lie in one universe, or each may lie where there is room. */
  readonly breaks: 'in-one-universe' | 'anywhere';
}

/**
 * Gives fixtures the next free addresses, in order: each starts at the first free room after the one before. What they
 * held before counts as free. Never overlaps, never crosses slot 512. [PL1]
 */
export function placePlan(
  rig: Rig,
  { fixtures: ids, from, breaks }: PlaceRequest,
  index: OccupancyIndex = createOccupancy(rig),
): Result<Plan, PlanRefusal> {
  const fixtures = chosen(rig, ids);
  if (!fixtures.ok) return fixtures;
  const moving = new Set(ids);
  const room = new Room(index, (seat) => moving.has(seat.fixture));
  const edits: Edit[] = [];
  let cursor: number = from;
  for (const fixture of fixtures.value) {
    const placed = placeOne(room, rig, fixture, { cursor, breaks });
    if (!placed.ok) return placed;
    edits.push(...addressEdits(fixture, placed.value.addresses));
    cursor = placed.value.cursor;
  }
  return planOf(rig, 'place', edits);
}

interface Placed {
  /** Start address of each break, break 1 first; null for a break without slots. */
  readonly addresses: readonly (Absolute | null)[];
  /** The address after the last slot taken; may lie past the last universe. */
  readonly cursor: number;
}

/** Takes room for one fixture at or after `cursor`. */
function placeOne(
  room: Room,
  rig: Rig,
  fixture: Fixture,
  { cursor, breaks }: { readonly cursor: number; readonly breaks: PlaceRequest['breaks'] },
): Result<Placed, PlanRefusal> {
  const mode = modeOf(rig, fixture);
  if (mode === undefined) return refuse({ code: 'mode-unknown', fixture: fixture.id });
  const { footprints } = mode;
  const tooWide = breaks === 'in-one-universe' ? sum(footprints) : Math.max(...footprints);
  if (tooWide > SLOTS) return refuse({ code: 'too-wide', fixture: fixture.id, slots: tooWide });
  const placed =
    breaks === 'in-one-universe' ? fitTogether(room, cursor, footprints) : fitApart(room, cursor, footprints);
  return placed === undefined ? refuse({ code: 'no-room', fixture: fixture.id, slots: tooWide }) : ok(placed);
}

/** Takes room for a copy of a fixture, each break after the same break of the original; in one universe if that is. */
export function placeBeside(room: Room, rig: Rig, fixture: Fixture): Result<Placed, PlanRefusal> {
  const starts = fixture.addresses.filter((address) => address !== null);
  const cursor = starts[0] ?? absolute(1, 1);
  if (new Set(starts.map(universeOf)).size < 2)
    return placeOne(room, rig, fixture, { cursor, breaks: 'in-one-universe' });
  const footprints = modeOf(rig, fixture)?.footprints;
  if (footprints === undefined) return refuse({ code: 'mode-unknown', fixture: fixture.id });
  const addresses: (Absolute | null)[] = [];
  for (const [part, slots] of footprints.entries()) {
    const start = slots === 0 ? null : room.first(fixture.addresses[part] ?? cursor, slots);
    if (start === undefined)
      return refuse({ code: slots > SLOTS ? 'too-wide' : 'no-room', fixture: fixture.id, slots });
    if (start !== null) room.take(start, slots);
    addresses.push(start);
  }
  return ok({ addresses, cursor });
}

const sum = (footprints: readonly number[]) => footprints.reduce((total, footprint) => total + footprint, 0);

function fitApart(room: Room, from: number, footprints: readonly number[]): Placed | undefined {
  let cursor = from;
  const addresses: (Absolute | null)[] = [];
  for (const footprint of footprints) {
    const start = footprint === 0 ? null : isAbsolute(cursor) ? room.first(cursor, footprint) : undefined;
    if (start === undefined) return undefined;
    addresses.push(start);
    if (start === null) continue;
    room.take(start, footprint);
    cursor = start + footprint;
  }
  return { addresses, cursor };
}

function fitTogether(room: Room, from: number, footprints: readonly number[]): Placed | undefined {
  if (!isAbsolute(from)) return undefined;
  let slot: number = slotOf(from);
  for (let universe = universeOf(from) as number; universe <= LAST_UNIVERSE; universe++) {
    const slots = fitInUniverse(room, universe, slot, footprints);
    if (slots !== undefined) return takeAll(room, universe, slots, footprints);
    slot = 1;
  }
  return undefined;
}

function fitInUniverse(
  room: Room,
  universe: number,
  from: number,
  footprints: readonly number[],
): readonly (number | null)[] | undefined {
  let slot = from;
  const slots: (number | null)[] = [];
  for (const footprint of footprints) {
    const start = footprint === 0 ? null : room.firstIn(universe, slot, footprint);
    if (start === undefined) return undefined;
    slots.push(start);
    if (start !== null) slot = start + footprint;
  }
  return slots;
}

function takeAll(
  room: Room,
  universe: number,
  slots: readonly (number | null)[],
  footprints: readonly number[],
): Placed {
  let cursor = 0;
  const addresses = slots.map((slot, part) => {
    if (slot === null) return null;
    const start = absolute(universe, slot);
    room.take(start, footprints[part] ?? 0);
    cursor = start + (footprints[part] ?? 0);
    return start;
  });
  return { addresses, cursor };
}
