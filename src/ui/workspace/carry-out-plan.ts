import type { Result } from '#base/result.ts';
import type { Plan } from '#engine/model/edit.ts';
import type { PlanRefusal } from '#engine/patch/plan-refusal.ts';
import { planRefusalSentence } from '#words/plans.ts';
import type { RigStore } from '../live/rig-store.ts';
import { refusalSentence } from './notice-line.tsx';

/** Carries a plan out; answers with why not, as a sentence. */
export function carryOutPlan(store: RigStore, plan: Result<Plan, PlanRefusal>): string | undefined {
  if (!plan.ok) return planRefusalSentence(plan.error, store.rig());
  const done = store.apply(plan.value);
  return done.ok ? undefined : refusalSentence(done.error, store.rig());
}
