import { SLOTS, type Slot, slotOf, universeOf } from '../model/address.ts';
import { modeOf } from '../model/find-mode.ts';
import type { SlotRun } from '../model/finding.ts';
import type { Fixture } from '../model/fixture.ts';
import type { Mode, Rig } from '../model/rig.ts';

/** The slots one break of a fixture listens to, cut at slot 512: `over` of them would lie past it. `part` is 1-based. */
export interface Claim extends SlotRun {
  readonly part: number;
  readonly over: number;
}

/**
 * What a fixture set to `mode` claims, one claim per break that has both a start address and slots. [OC1] [OC2]
 * With an unknown mode every start address claims its one slot. [OC3]
 */
export function claimsOf(fixture: Fixture, mode: Mode | undefined): readonly Claim[] {
  const claims: Claim[] = [];
  for (let part = 0; part < fixture.addresses.length; part++) {
    const start = fixture.addresses[part] ?? null;
    const footprint = footprintAt(mode, part);
    if (start === null || footprint === 0) continue;
    const first = slotOf(start);
    const end = first + footprint - 1;
    const last = Math.min(end, SLOTS) as Slot;
    claims.push({ universe: universeOf(start), first, last, part: part + 1, over: end - last });
  }
  return claims;
}

/** Slots of break `part` (0-based here) of a mode; 1 for any break of an unknown mode, 0 for a break it does not have. */
export function footprintAt(mode: Mode | undefined, part: number): number {
  if (mode === undefined) return 1;
  const footprint = mode.footprints[part] ?? 0;
  return footprint > 0 ? Math.ceil(footprint) : 0;
}

/** What a fixture of a rig claims, one run per break, cut at slot 512. */
export function slotRuns(rig: Rig, fixture: Fixture): readonly Claim[] {
  return claimsOf(fixture, modeOf(rig, fixture));
}
