import { SLOTS } from '../model/address.ts';

/** A bit on the line, in microseconds: 250 kbit/s (ANSI E1.11). */
const BIT = 4;
/** A slot: a start bit, eight of data, two to stop. */
const SLOT_BITS = 11;

/** Shortest break, mark after it, and time from break to break, in microseconds (ANSI E1.11, by device manuals). */
const SHORTEST = {
  transmitter: { break: 92, mark: 12, whole: 1204 },
  receiver: { break: 88, mark: 8, whole: 1196 },
} as const;

/** Who has to keep to it: what sends a frame, or what has to understand it. */
export type FrameEnd = keyof typeof SHORTEST;

/** The shortest legal time of a frame of so many slots, in microseconds, its start code counted. [NW1] */
export function frameTime(slots: number, end: FrameEnd): number {
  if (!Number.isInteger(slots) || slots < 1 || slots > SLOTS) throw new Error(`no frame has ${slots} slots`);
  const shortest = SHORTEST[end];
  return Math.max(shortest.whole, shortest.break + shortest.mark + BIT * SLOT_BITS * (slots + 1));
}

/** How often frames of so many slots can follow each other at most, in Hz. */
export const frameRate = (slots: number, end: FrameEnd): number => 1e6 / frameTime(slots, end);

/** Bits of a frame on the line at least, break and mark counted in bit times. */
export const frameBits = (slots: number): number =>
  (SHORTEST.transmitter.break + SHORTEST.transmitter.mark) / BIT + SLOT_BITS * (slots + 1);
