import type { Result } from '#base/result.ts';
import { diffEdits } from '../diff/diff-edits.ts';
import { diffRigs } from '../diff/rig-diff.ts';
import type { Edit, Plan } from '../model/edit.ts';
import type { FixtureId } from '../model/ids.ts';
import { lockedAgainst } from '../model/locked.ts';
import type { Rig } from '../model/rig.ts';
import { planOf } from './chosen.ts';
import type { PlanRefusal } from './plan-refusal.ts';

/** Makes a rig what it was at another moment: a new edit on top of all others, of which none is lost. [HI4] */
export const goBackPlan = (rig: Rig, then: Rig): Result<Plan, PlanRefusal> =>
  planOf(rig, 'go-back', diffEdits(diffRigs(rig, then)));

/** Every unit that is locked and of which the edits would change an address, each once: while one is, they are refused. */
export function lockedInTheWay(rig: Rig, edits: readonly Edit[]): readonly FixtureId[] {
  const found = new Set<FixtureId>();
  for (const edit of edits) {
    const locked = lockedAgainst(rig, [edit]);
    if (locked !== undefined) found.add(locked);
  }
  return [...found];
}
