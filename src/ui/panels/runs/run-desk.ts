import type { Result } from '#base/result.ts';
import type { Plan } from '#engine/model/edit.ts';
import type { PlanRefusal } from '#engine/patch/plan-refusal.ts';
import { RUNS_WORDS as words } from '#words/runs.ts';
import type { RigStore } from '../../live/rig-store.ts';
import { carryOutPlan } from '../../workspace/carry-out-plan.ts';

/** What came of the last step, in a sentence. */
export interface Said {
  readonly text: string;
  /** Whether it was a step of mine that can be taken back. */
  readonly did: 'step' | 'nothing';
}

/** Carries a plan out and says what came of it: `done` when it was, else why not. */
export function carryOutSaying(store: RigStore, plan: Result<Plan, PlanRefusal>, done: string): Said {
  const why = carryOutPlan(store, plan);
  return why === undefined ? { text: done, did: 'step' } : { text: why, did: 'nothing' };
}

/** Takes my last step back. */
export function takeBackStep(store: RigStore): Said {
  return { text: store.undo() === undefined ? '' : words.undone, did: 'nothing' };
}
