import type { Convention } from '../model/card.ts';
import { isPortAddress, type PortAddress } from './port-address.ts';
import { isSacnUniverse, type SacnUniverse } from './sacn-universe.ts';

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
