import { SLOTS, type Slot } from '../model/address.ts';

/** `A`: the switches hold the address; `B`: they hold the address less 1, as on some older devices. Source: device manuals. */
export type SwitchVariant = 'A' | 'B';

/** Address switches of a device; a tenth, where there is one, is for something else (device manuals). */
export const ADDRESS_SWITCHES = 9;

/**
 * How the switches stand for a start address, switch 1 (worth 1) first, each worth twice the one before; null where they cannot
 * show it: 512 in variant A. [AD11]
 */
export function dipSwitches(address: Slot, variant: SwitchVariant): readonly boolean[] | null {
  const held = variant === 'A' ? address : address - 1;
  if (held >= 2 ** ADDRESS_SWITCHES) return null;
  return Array.from({ length: ADDRESS_SWITCHES }, (_, at) => (held & (1 << at)) !== 0);
}

/** The start address that switches stand at; null where they stand at none: all off in variant A, or another number of switches. [AD11] */
export function addressOfSwitches(switches: readonly boolean[], variant: SwitchVariant): Slot | null {
  const held = switches.reduce((sum, on, at) => sum + (on ? 2 ** at : 0), 0);
  const address = variant === 'A' ? held : held + 1;
  const stands = switches.length === ADDRESS_SWITCHES && address >= 1 && address <= SLOTS;
  return stands ? (address as Slot) : null;
}
