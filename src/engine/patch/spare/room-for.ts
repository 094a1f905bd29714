import { createOccupancy, type OccupancyIndex } from '../../address/occupancy-index.ts';
import { openRanges, type UniverseRange, universesIn } from '../../address/universe-ranges.ts';
import { SLOTS, type Universe } from '../../model/address.ts';
import type { Rig } from '../../model/rig.ts';
import { Room } from '../room.ts';

export interface SpareOptions {
  /** Universes looked at, in use or not; those in use when empty. */
  readonly allowed: readonly UniverseRange[];
  readonly barred: readonly UniverseRange[];
  /** Units start on slot 1 and each so many slots after it. */
  readonly grid: number;
  /** Slots left free at the end of each universe. */
  readonly spareAtEnd: number;
}

export interface Spare {
  /** How many more units fit beside everything that is there. */
  readonly units: number;
  /** How many of them in each universe that takes any, ascending. */
  readonly universes: readonly { readonly universe: Universe; readonly units: number }[];
}

const DEFAULTS: SpareOptions = { allowed: [], barred: [], grid: 1, spareAtEnd: 0 };

/** How many more units of these footprints fit and where, the breaks of each end to end. [PL25] */
export function roomFor(
  rig: Rig,
  footprints: readonly number[],
  options: Partial<SpareOptions> = {},
  index: OccupancyIndex = createOccupancy(rig),
): Spare {
  const full = { ...DEFAULTS, ...options };
  const room = new Room(index, () => false);
  const slots = footprints.reduce((total, footprint) => total + Math.ceil(footprint), 0);
  const spare: { universe: Universe; units: number }[] = [];
  if (slots < 1 || slots > SLOTS) return { units: 0, universes: spare };
  for (const universe of looked(index, full)) {
    let units = 0;
    for (const stretch of room.stretches(universe)) units += unitsIn(stretch, slots, full);
    if (units > 0) spare.push({ universe, units });
  }
  return { units: spare.reduce((total, { units }) => total + units, 0), universes: spare };
}

function looked(index: OccupancyIndex, { allowed, barred }: SpareOptions): Iterable<Universe> {
  const open = openRanges(allowed, barred);
  if (allowed.length > 0) return universesIn(open);
  return index.universes().filter((at) => open.some(({ first, last }) => first <= at && at <= last));
}

function unitsIn(
  { first, last }: { readonly first: number; readonly last: number },
  slots: number,
  { grid, spareAtEnd }: SpareOptions,
): number {
  const start = Math.ceil((first - 1) / grid) * grid + 1;
  const free = Math.min(last, SLOTS - spareAtEnd) - start + 1;
  return free < slots ? 0 : Math.floor((free - slots) / (Math.ceil(slots / grid) * grid)) + 1;
}
