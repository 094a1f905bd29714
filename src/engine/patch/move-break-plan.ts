import { type Result, refuse } from '#base/result.ts';
import { getRow, rowsOf } from '#base/table.ts';
import { footprintAt } from '../address/claim.ts';
import { type Absolute, SLOTS, slotOf } from '../model/address.ts';
import type { Plan } from '../model/edit.ts';
import { ADDRESS_FIELDS } from '../model/field.ts';
import { modeOf } from '../model/find-mode.ts';
import type { Fixture } from '../model/fixture.ts';
import type { FixtureId } from '../model/ids.ts';
import type { Rig } from '../model/rig.ts';
import { cellEdits, planOf } from './chosen.ts';
import { hasAny, partiesOf } from './party.ts';
import type { PlanRefusal } from './plan-refusal.ts';

/** One break of a fixture; `part` is 1-based. */
export interface BreakOf {
  readonly fixture: FixtureId;
  readonly part: number;
}

/** Moves one break to `to`, with those that act as one with the fixture; the other breaks stay. Says nothing of who sits there. [PL28] */
export function moveBreakPlan(rig: Rig, { fixture: id, part }: BreakOf, to: Absolute): Result<Plan, PlanRefusal> {
  const fixture = getRow(rig.fixtures, id);
  const field = ADDRESS_FIELDS[part - 1];
  if (fixture === undefined || field === undefined) return refuse({ code: 'no-such-fixture', fixture: id });
  const over = slotOf(to) + footprintAt(modeOf(rig, fixture), part - 1) - 1 - SLOTS;
  if (over > 0) return refuse({ code: 'crosses-end', fixture: id, over });
  return planOf(
    rig,
    'move',
    partyOf(rig, fixture).flatMap((each) => cellEdits(each, field, to)),
  );
}

/** The fixture and those that act as one with it. */
export function partyOf(rig: Rig, fixture: Fixture): readonly Fixture[] {
  if (fixture.channel === null) return [fixture];
  const ids = new Set([fixture.id]);
  const alike = [...rowsOf(rig.fixtures)].filter(({ channel }) => channel === fixture.channel);
  return partiesOf(alike).find((party) => hasAny(party, ids))?.fixtures ?? [fixture];
}
