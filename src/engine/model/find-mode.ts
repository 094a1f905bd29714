import { getRow } from '#base/table.ts';
import type { Fixture } from './fixture.ts';
import { modeId } from './ids.ts';
import type { Mode, Rig } from './rig.ts';

/** The mode a fixture is set to, or undefined when this rig does not know it. */
export function modeOf(rig: Rig, fixture: Pick<Fixture, 'type' | 'mode'>): Mode | undefined {
  return getRow(rig.modes, modeId(fixture.type, fixture.mode));
}

const ONE_SLOT: readonly number[] = Object.freeze([1]);

/** Slots per break. A fixture whose mode is unknown surely listens to its start slot, and counts for that one. */
export function footprintsOf(rig: Rig, fixture: Pick<Fixture, 'type' | 'mode'>): readonly number[] {
  return modeOf(rig, fixture)?.footprints ?? ONE_SLOT;
}
