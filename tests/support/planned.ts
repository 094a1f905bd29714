import type { Result } from '#base/result.ts';
import type { Rng } from '#base/rng.ts';
import { getRow, rowsOf, tableOf } from '#base/table.ts';
import { slotRuns } from '#engine/address/claim.ts';
import { checkRig } from '#engine/check/check-rig.ts';
import { absolute } from '#engine/model/address.ts';
import { applyEdits } from '#engine/model/apply-edits.ts';
import type { Plan } from '#engine/model/edit.ts';
import type { Finding } from '#engine/model/finding.ts';
import { type FixtureId, fixtureId } from '#engine/model/ids.ts';
import type { Rig } from '#engine/model/rig.ts';
import type { PlanRefusal } from '#engine/patch/plan-refusal.ts';
import { idsOf } from '#tests/support/random-rig.ts';
import { printFinding, printPlan, printRig } from '#tests/support/rig-shorthand.ts';

type Planned = Result<Plan, PlanRefusal>;

export const ids = (text: string) => text.split(' ').map(fixtureId);
export const shown = (plan: Planned) => (plan.ok ? printPlan(plan.value) : plan.error);
export const after = (rig: Rig, plan: Planned) => (plan.ok ? printRig(applyEdits(rig, plan.value.edits)) : plan.error);
export const isClash = ({ rule }: Finding) => rule === 'slots-claimed-twice' || rule === 'past-the-end';
export const clashes = (rig: Rig) => checkRig(rig).filter(isClash).map(printFinding);
export const shuffled = (rig: Rig): Rig => ({ ...rig, fixtures: tableOf([...rowsOf(rig.fixtures)].reverse()) });

/** A few fixtures of a rig, in random order. */
export function someOf(rng: Rng, rig: Rig): FixtureId[] {
  const all = idsOf(rig);
  return Array.from({ length: 1 + rng.int(6) }, () => rng.pick(all));
}

/** The absolute slots a fixture claims. */
export function slotsOf(rig: Rig, id: FixtureId): number[] {
  const fixture = getRow(rig.fixtures, id);
  if (fixture === undefined) return [];
  return slotRuns(rig, fixture).flatMap(({ universe, first, last }) =>
    Array.from({ length: last - first + 1 }, (_, i) => absolute(universe, first + i)),
  );
}
