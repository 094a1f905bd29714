import { isPortAddress, type PortAddress } from './port-address.ts';
import { isSacnUniverse, type SacnUniverse } from './sacn-universe.ts';

/**
 * How a crew relates sACN numbers to Port-Addresses: neither standard does. `same-number`: universe 1 is 0:0:1, and 0:0:0 has
 * none; `plus-one`: universe 1 is 0:0:0. Both are in use, so that one is never taken without asking (common practice).
 */
export const CONVENTIONS = ['same-number', 'plus-one'] as const;
export type Convention = (typeof CONVENTIONS)[number];

const AHEAD: Readonly<Record<Convention, number>> = { 'same-number': 0, 'plus-one': 1 };

/** The sACN number of a Port-Address by a convention; null where it has none. [AD9] */
export function sacnByConvention(address: PortAddress, convention: Convention): SacnUniverse | null {
  const universe = address + AHEAD[convention];
  return isSacnUniverse(universe) ? universe : null;
}

/** The Port-Address of an sACN number by a convention; null where Art-Net has none. [AD9] */
export function portAddressByConvention(universe: SacnUniverse, convention: Convention): PortAddress | null {
  const address = universe - AHEAD[convention];
  return isPortAddress(address) ? address : null;
}
