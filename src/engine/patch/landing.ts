import { getRow } from '#base/table.ts';
import { footprintAt } from '../address/claim.ts';
import type { OccupancyIndex } from '../address/occupancy-index.ts';
import { actAsOne } from '../address/unit.ts';
import { type Absolute, SLOTS, slotOf, universeOf } from '../model/address.ts';
import { modeOf } from '../model/find-mode.ts';
import type { Fixture } from '../model/fixture.ts';
import { type FixtureId, modeId } from '../model/ids.ts';
import type { Rig } from '../model/rig.ts';
import { type BreakOf, partyOf } from './move-break-plan.ts';

/** Where a break would sit, and what it would meet there. */
export interface Landing {
  readonly at: Absolute;
  readonly slots: number;
  /** So many of its slots would lie past slot 512. */
  readonly over: number;
  /** Units whose slots it would share and should not, by first slot; the fixture itself when it meets a break of its own. */
  readonly meets: readonly FixtureId[];
}

/** What moving a break to `at` would come to, without doing it; undefined when the fixture is gone. [PL28] */
export function landingOf(rig: Rig, occupancy: OccupancyIndex, moved: BreakOf, at: Absolute): Landing | undefined {
  const fixture = getRow(rig.fixtures, moved.fixture);
  if (fixture === undefined) return undefined;
  const slots = footprintAt(modeOf(rig, fixture), moved.part - 1);
  const end = slotOf(at) + slots - 1;
  const after = withBreak(fixture, moved.part, at);
  const party = new Set(partyOf(rig, fixture).map(({ id }) => id));
  const meets = new Set<FixtureId>();
  for (const seat of occupancy.of(universeOf(at)).seats) {
    if (seat.first > end || seat.last < slotOf(at)) continue;
    if (party.has(seat.fixture)) {
      if (seat.part !== moved.part) meets.add(fixture.id);
    } else if (!willActAsOne(getRow(rig.fixtures, seat.fixture), after)) meets.add(seat.fixture);
  }
  return { at, slots, over: Math.max(0, end - SLOTS), meets: [...meets] };
}

function withBreak(fixture: Fixture, part: number, at: Absolute): Fixture {
  return { ...fixture, addresses: fixture.addresses.map((address, n) => (n === part - 1 ? at : address)) };
}

/** Units that will share their start on purpose are not in each other's way. [CH2] */
function willActAsOne(other: Fixture | undefined, after: Fixture): boolean {
  return other !== undefined && actAsOne(sharer(other), sharer(after));
}

const sharer = (fixture: Fixture) => ({ fixture, modeKey: modeId(fixture.type, fixture.mode) });
