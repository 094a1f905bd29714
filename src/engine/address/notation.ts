import { ok, type Result, refuse } from '#base/result.ts';
import { type Absolute, absolute, isAbsolute, LAST_UNIVERSE, SLOTS, slotOf, universeOf } from '../model/address.ts';

export type AddressRefusal = 'not-an-address' | 'universe-out-of-range' | 'slot-out-of-range';

/** `2:101`: universe 2, slot 101. */
export function formatAddress(address: Absolute): string {
  return `${universeOf(address)}:${slotOf(address)}`;
}

/**
 * Reads `2:101`, `2/101`, `2.101` or an absolute number, with white space around the parts and leading zeros
 * allowed (`2.001` is slot 1). [AD2]
 */
export function parseAddress(text: string): Result<Absolute, AddressRefusal> {
  const match = /^\s*(\d{1,9})\s*(?:[:/.]\s*(\d{1,9})\s*)?$/.exec(text);
  if (!match) return refuse('not-an-address');
  const first = Number(match[1]);
  if (match[2] === undefined) return isAbsolute(first) ? ok(first) : refuse('universe-out-of-range');
  const slot = Number(match[2]);
  if (first < 1 || first > LAST_UNIVERSE) return refuse('universe-out-of-range');
  if (slot < 1 || slot > SLOTS) return refuse('slot-out-of-range');
  return ok(absolute(first, slot));
}
