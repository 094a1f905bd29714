import { type Result, refuse } from '#base/result.ts';
import type { Plan } from '../model/edit.ts';
import type { FixtureId } from '../model/ids.ts';
import type { Rig } from '../model/rig.ts';
import { addressEdits, chosen, planOf } from './chosen.ts';
import type { PlanRefusal } from './plan-refusal.ts';

/** Two fixtures take each other's start addresses, break by break; one of them may have none. [PL4] */
export function swapPlan(rig: Rig, one: FixtureId, other: FixtureId): Result<Plan, PlanRefusal> {
  const fixtures = chosen(rig, [one, other]);
  if (!fixtures.ok) return fixtures;
  const [a, b] = fixtures.value;
  if (a === undefined || b === undefined) return refuse({ code: 'changes-nothing' });
  if (a.addresses.length + b.addresses.length === 0) return refuse({ code: 'not-patched' });
  return planOf(rig, 'swap', [...addressEdits(a, b.addresses), ...addressEdits(b, a.addresses)]);
}
