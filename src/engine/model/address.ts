import type { Brand } from '#base/brand.ts';

/** Slots in a universe (ANSI E1.11). */
export const SLOTS = 512;
/** The last universe number that may carry data (ANSI E1.31). */
export const LAST_UNIVERSE = 63999;

/** A universe number, 1 to 63999 (ANSI E1.31). */
export type Universe = Brand<number, 'Universe'>;
/** A slot of a universe, 1 to 512 (ANSI E1.11). */
export type Slot = Brand<number, 'Slot'>;
/** A start address counted through all universes: universe 1 slot 1 is 1 (GDTF, MVR). */
export type Absolute = Brand<number, 'Absolute'>;

export const LAST_ABSOLUTE = LAST_UNIVERSE * SLOTS;

export function isAbsolute(value: number): value is Absolute {
  return Number.isInteger(value) && value >= 1 && value <= LAST_ABSOLUTE;
}

export const universeOf = (address: Absolute): Universe => (Math.floor((address - 1) / SLOTS) + 1) as Universe;

export const slotOf = (address: Absolute): Slot => (((address - 1) % SLOTS) + 1) as Slot;

/** The absolute address of a universe and slot; throws when either is out of its range. */
export function absolute(universe: number, slot: number): Absolute {
  const value = (universe - 1) * SLOTS + slot;
  if (!Number.isInteger(slot) || slot < 1 || slot > SLOTS || !isAbsolute(value)) {
    throw new Error(`no such address: universe ${universe}, slot ${slot}`);
  }
  return value;
}
