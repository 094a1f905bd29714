import type { FixtureType, TypeChannel, TypeMode } from '../model/fixture-type.ts';
import { type Cell, cellsOf } from './cells-of.ts';

/** One use of one slot. */
interface SlotUse {
  readonly channel: TypeChannel;
  /** What the channel does first; empty when nobody said. */
  readonly attribute: string;
  /** The cell it belongs to; empty for the body. */
  readonly cell: string;
  /** Which byte of the value: 0 is coarse, 1 fine, 2 ultra, 3 the last. */
  readonly byte: number;
  /** Bytes of the value. */
  readonly of: number;
}

/** A slot of a break, 1-based. Without a use it is a hole, which belongs to the unit all the same; with two it is a fault. */
export interface TypeSlot {
  readonly slot: number;
  readonly uses: readonly SlotUse[];
}

interface BreakSlots {
  readonly break: number;
  /** Every slot from 1 to the footprint. */
  readonly slots: readonly TypeSlot[];
}

export interface ModeSlots {
  /** Breaks that have slots, ascending. */
  readonly breaks: readonly BreakSlots[];
  /** Channels without slots, once for each place their part stands in. */
  readonly virtual: number;
  /** Channels whose part cannot be reached from the mode's root: they take no slot. */
  readonly unreached: readonly TypeChannel[];
}

/** The last slot that is still laid out: anything beyond is a fault that `typeTroubles` names, and costs no memory. */
export const LAST_LAID_OUT = 1024;

/**
 * What every slot of every break of a mode is. A footprint is the highest slot taken, counted from 1; virtual channels take
 * nothing, and a slot taken twice counts once. Source: GDTF (DIN SPEC 15800), DMXChannel, GeometryReference, Break.
 */
export function slotsOf(type: FixtureType, mode: TypeMode): ModeSlots {
  const cells = cellsOf(type, mode);
  const taken = new Map<number, Map<number, SlotUse[]>>();
  const unreached: TypeChannel[] = [];
  let virtual = 0;
  for (const channel of mode.channels) {
    const places = cells.get(channel.part) ?? [];
    if (places.length === 0) unreached.push(channel);
    else if (channel.offsets.length === 0) virtual += places.length;
    for (const cell of places) takeSlots(channel, cell, taken);
  }
  return { breaks: [...taken].sort(([a], [b]) => a - b).map(laidOut), virtual, unreached };
}

/** Slots per break, break 1 first; 0 for a break without any. */
export function footprintsOfMode(type: FixtureType, mode: TypeMode): readonly number[] {
  const { breaks } = slotsOf(type, mode);
  const last = Math.max(0, ...breaks.map((each) => each.break));
  return Array.from({ length: last }, (_, at) => breaks.find((each) => each.break === at + 1)?.slots.length ?? 0);
}

function takeSlots(channel: TypeChannel, cell: Cell, taken: Map<number, Map<number, SlotUse[]>>): void {
  const breakNumber = channel.break === 'of-copy' ? (cell.ownBreak ?? 1) : channel.break;
  const before = cell.before.get(breakNumber) ?? 0;
  const attribute = channel.uses[0]?.attribute ?? '';
  for (const [byte, offset] of channel.offsets.entries()) {
    const slot = before + offset;
    if (slot < 1 || slot > LAST_LAID_OUT || !isBreak(breakNumber)) continue;
    const slots = taken.get(breakNumber) ?? new Map<number, SlotUse[]>();
    taken.set(breakNumber, slots);
    const use = { channel, attribute, cell: cell.name, byte, of: channel.offsets.length };
    slots.set(slot, [...(slots.get(slot) ?? []), use]);
  }
}

/** Breaks count from 1 to 255 (GDTF schema, Break). */
export const isBreak = (value: number): boolean => Number.isInteger(value) && value >= 1 && value <= 255;

const HOLE: readonly never[] = Object.freeze([]);

function laidOut([number, slots]: [number, ReadonlyMap<number, readonly SlotUse[]>]): BreakSlots {
  const footprint = Math.max(...slots.keys());
  return {
    break: number,
    slots: Array.from({ length: footprint }, (_, at) => ({ slot: at + 1, uses: slots.get(at + 1) ?? HOLE })),
  };
}
