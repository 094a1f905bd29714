import { useEffect, useState } from 'react';
import type { Universe } from '#engine/model/address.ts';
import { anchoredUniverse, universeAnchor } from '../network/universe-anchor.ts';

/** Which universe the page shows, and how: the part of its address behind the `#`, so that it can be sent to somebody. */
export interface UniversesPlace {
  readonly view: 'all' | 'slots';
  /** Undefined when the address names none. */
  readonly universe: Universe | undefined;
}

/** Reads `#universe-12` and `#all`; anything else is slot by slot, and no universe. */
export const readPlace = (hash: string): UniversesPlace =>
  hash === '#all' ? { view: 'all', universe: undefined } : { view: 'slots', universe: anchoredUniverse(hash) };

/** The inverse of `readPlace`. */
export const spellPlace = ({ view, universe }: UniversesPlace): string =>
  view === 'all' ? '#all' : universe === undefined ? '' : `#${universeAnchor(universe)}`;

/** The place in the address, and the way to another; going there is no step back and forth of the browser. */
export function useUniversesPlace(): readonly [UniversesPlace, (place: UniversesPlace) => void] {
  const [place, setPlace] = useState(() => readPlace(location.hash));
  useEffect(() => {
    const follow = () => setPlace(readPlace(location.hash));
    window.addEventListener('hashchange', follow);
    return () => window.removeEventListener('hashchange', follow);
  }, []);
  const go = (next: UniversesPlace) => {
    setPlace(next);
    window.history.replaceState(null, '', location.pathname + location.search + spellPlace(next));
  };
  return [place, go];
}
