import { footprintAt } from '../address/claim.ts';
import { isAbsolute, SLOTS, type Slot, slotOf, type Universe, universeOf } from '../model/address.ts';
import type { Fixture } from '../model/fixture.ts';
import type { Mode } from '../model/rig.ts';
import { type PinnedUse, pinnedUses } from '../type/pin-slots.ts';

/** One slot of a fixture, whether it has an address or not. */
export interface FixtureSlot {
  /** Which of its breaks, and which slot of it, both 1-based. */
  readonly part: number;
  readonly own: number;
  /** Where it is; null without a start address, and past slot 512. */
  readonly at: { readonly universe: Universe; readonly slot: Slot } | null;
  /** What it does: nothing for a hole; null when nobody knows. */
  readonly uses: readonly PinnedUse[] | null;
}

/** What a slot of a mode does; null unless the mode's copy from the library says so. */
export function usesOf(mode: Mode | undefined, part: number, own: number): readonly PinnedUse[] | null {
  return mode?.pin ? pinnedUses(mode.pin, part, own) : null;
}

/** How many slots `fixtureSlots` has. */
export function countSlots(fixture: Fixture, mode: Mode | undefined): number {
  let count = 0;
  for (let part = 0; part < partsOf(fixture, mode); part++) count += slotsInPart(fixture, mode, part);
  return count;
}

/** Every slot of every break of a fixture in order; of an unknown mode the one slot at each start address. [SL4] */
export function* fixtureSlots(fixture: Fixture, mode: Mode | undefined): Generator<FixtureSlot> {
  for (let part = 0; part < partsOf(fixture, mode); part++) {
    const start = fixture.addresses[part] ?? null;
    const count = slotsInPart(fixture, mode, part);
    for (let own = 1; own <= count; own++) {
      const fits = start !== null && slotOf(start) + own - 1 <= SLOTS;
      const address = fits ? start + own - 1 : 0;
      const at = isAbsolute(address) ? { universe: universeOf(address), slot: slotOf(address) } : null;
      yield { part: part + 1, own, at, uses: usesOf(mode, part + 1, own) };
    }
  }
}

const partsOf = (fixture: Fixture, mode: Mode | undefined) =>
  mode === undefined ? fixture.addresses.length : mode.footprints.length;

function slotsInPart(fixture: Fixture, mode: Mode | undefined, part: number): number {
  if (mode === undefined && (fixture.addresses[part] ?? null) === null) return 0;
  return footprintAt(mode, part);
}
