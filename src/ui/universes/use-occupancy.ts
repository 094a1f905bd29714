import { useCallback, useSyncExternalStore } from 'react';
import { type Occupancy, occupancyFrom } from '#engine/address/occupancy.ts';
import type { Universe } from '#engine/model/address.ts';
import type { RigStore } from '../live/rig-store.ts';

const empty = new Map<Universe, Occupancy>();

/** Who sits where in a universe, as it stands; an unused universe always answers with the same empty one. */
export function useOccupancy(store: RigStore, universe: Universe): Occupancy {
  const read = useCallback(() => {
    const occupancy = store.occupancy().of(universe);
    return occupancy.seats.length > 0 ? occupancy : emptyOf(universe);
  }, [store, universe]);
  return useSyncExternalStore(store.subscribe, read);
}

function emptyOf(universe: Universe): Occupancy {
  const known = empty.get(universe);
  if (known !== undefined) return known;
  const made = occupancyFrom(universe, []);
  empty.set(universe, made);
  return made;
}
