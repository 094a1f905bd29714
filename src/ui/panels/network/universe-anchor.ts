import { LAST_UNIVERSE, type Universe } from '#engine/model/address.ts';

/** The name of a universe's place on a page, behind the `#` of an address. */
export const universeAnchor = (universe: number): string => `universe-${universe}`;

/** The universe that the part of an address behind `#` names; undefined for none. */
export function anchoredUniverse(hash = location.hash): Universe | undefined {
  const number = Number(/^#universe-([1-9]\d{0,4})$/.exec(hash)?.[1] ?? 0);
  return number >= 1 && number <= LAST_UNIVERSE ? (number as Universe) : undefined;
}
