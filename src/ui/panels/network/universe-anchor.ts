import type { Universe } from '#engine/model/address.ts';

/** What a link to a universe has behind its `#`, on the page of universes and on that of the network. */
export const universeAnchor = (universe: number): string => `universe-${universe}`;

/** The universe that the address one is at names behind its `#`; undefined for none. */
export function anchoredUniverse(): Universe | undefined {
  const named = Number(/^#universe-([1-9]\d{0,4})$/.exec(window.location.hash)?.[1] ?? 0);
  return named === 0 ? undefined : (named as Universe);
}
