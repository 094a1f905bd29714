import type { Result } from '#base/result.ts';
import type { Plan } from '#engine/model/edit.ts';
import type { PlanRefusal } from '#engine/patch/plan-refusal.ts';
import { planRefusalSentence } from '#words/plans.ts';
import { RUNS_WORDS as words } from '#words/runs.ts';
import type { RigStore } from '../../live/rig-store.ts';
import { refusalSentence } from '../../workspace/notice-line.tsx';

/** What came of the last step, in a sentence. */
export interface Said {
  readonly text: string;
  /** Whether it was a step of mine that can be taken back. */
  readonly did: 'step' | 'nothing';
}

/** Carries a plan out and says what came of it: `done` when it was, else why not. */
export function carryOutPlan(store: RigStore, plan: Result<Plan, PlanRefusal>, done: string): Said {
  if (!plan.ok) return { text: planRefusalSentence(plan.error, store.rig()), did: 'nothing' };
  const applied = store.apply(plan.value);
  if (!applied.ok) return { text: refusalSentence(applied.error, store.rig()), did: 'nothing' };
  return { text: done, did: 'step' };
}

/** Takes my last step back. */
export function takeBackStep(store: RigStore): Said {
  return { text: store.undo() === undefined ? '' : words.undone, did: 'nothing' };
}
