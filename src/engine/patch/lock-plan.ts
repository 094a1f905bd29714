import { type Result, refuse } from '#base/result.ts';
import type { Plan } from '../model/edit.ts';
import type { FixtureId } from '../model/ids.ts';
import { isLocked } from '../model/locked.ts';
import type { Rig } from '../model/rig.ts';
import { cellEdits, chosen, planOf } from './chosen.ts';
import type { PlanRefusal } from './plan-refusal.ts';

/** Locks those of the chosen units that are not locked: `reason` says why, or who said so. Others keep the reason they have. [LK4] */
export function lockPlan(rig: Rig, ids: readonly FixtureId[], reason: string): Result<Plan, PlanRefusal> {
  const fixtures = chosen(rig, ids);
  if (!fixtures.ok) return fixtures;
  const text = reason.trim();
  if (text === '') return refuse({ code: 'no-reason' });
  const free = fixtures.value.filter((fixture) => !isLocked(fixture));
  return planOf(
    rig,
    'lock',
    free.flatMap((fixture) => cellEdits(fixture, 'lock', text)),
  );
}

/** Lets plans move the chosen units again. [LK4] */
export function unlockPlan(rig: Rig, ids: readonly FixtureId[]): Result<Plan, PlanRefusal> {
  const fixtures = chosen(rig, ids);
  if (!fixtures.ok) return fixtures;
  return planOf(
    rig,
    'lock',
    fixtures.value.flatMap((fixture) => cellEdits(fixture, 'lock', null)),
  );
}
