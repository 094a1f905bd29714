import type { FixtureId } from '#engine/model/ids.ts';
import type { RigStore } from './rig-store.ts';

/** What a person has chosen in an open rig, so that it is still chosen on another page of it. */
const CHOSEN = new WeakMap<RigStore, readonly FixtureId[]>();

const NOTHING: readonly FixtureId[] = Object.freeze([]);

/** The units chosen last, on whatever page, in order; some may be gone by now. */
export const chosenUnits = (store: RigStore): readonly FixtureId[] => CHOSEN.get(store) ?? NOTHING;

export function keepChosen(store: RigStore, units: readonly FixtureId[]): void {
  CHOSEN.set(store, units);
}
