import type { Brand } from '#base/brand.ts';
import { LAST_UNIVERSE } from '../model/address.ts';

/** The number by which sACN names a universe, 1 to 63999 (ANSI E1.31). It says nothing of the number a show gives it. */
export type SacnUniverse = Brand<number, 'SacnUniverse'>;

/** Where sources tell which universes they send (ANSI E1.31); it carries no levels. */
export const DISCOVERY_UNIVERSE = 64214;

/** 0 and 64000 to 65535 are reserved, and carry no levels. Source: ANSI E1.31. [AD8] */
export function isSacnUniverse(value: number): value is SacnUniverse {
  return Number.isInteger(value) && value >= 1 && value <= LAST_UNIVERSE;
}

/** The groups that carry a universe: IPv4, the Ethernet address that maps to, and IPv6. */
export interface MulticastGroup {
  readonly ipv4: string;
  readonly ethernet: string;
  readonly ipv6: string;
}

/** 239.255.hi.lo with the two bytes of the number; IPv6 from the 2018 edition, clause 9.3.2. Source: ANSI E1.31. [AD8] */
export function multicastGroup(universe: SacnUniverse | typeof DISCOVERY_UNIVERSE): MulticastGroup {
  const [high, low] = [universe >> 8, universe & 255];
  const hex = (byte: number) => byte.toString(16).padStart(2, '0');
  return {
    ipv4: `239.255.${high}.${low}`,
    ethernet: `01:00:5e:7f:${hex(high)}:${hex(low)}`,
    ipv6: `ff18::8300:${universe.toString(16)}`,
  };
}
