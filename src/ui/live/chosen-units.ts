import type { FixtureId } from '#engine/model/ids.ts';
import { createListeners } from './listeners.ts';
import type { RigStore } from './rig-store.ts';

/** The units a person has chosen in one open rig, on whichever page they did so. */
export interface ChosenUnits {
  ids(): readonly FixtureId[];
  choose(ids: readonly FixtureId[]): void;
  subscribe(listen: () => void): () => void;
}

const NONE: readonly FixtureId[] = Object.freeze([]);
const OF = new WeakMap<RigStore, ChosenUnits>();

/** What is chosen in an open rig: the pages of it share one choice. */
export function chosenUnits(store: RigStore): ChosenUnits {
  const known = OF.get(store);
  if (known !== undefined) return known;
  const listeners = createListeners();
  let chosen = NONE;
  const made: ChosenUnits = {
    ids: () => chosen,
    choose(ids) {
      chosen = ids;
      listeners.tell();
    },
    subscribe: listeners.add,
  };
  OF.set(store, made);
  return made;
}
