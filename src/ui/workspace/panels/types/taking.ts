import type { Result } from '#base/result.ts';
import type { Plan } from '#engine/model/edit.ts';
import type { FixtureType } from '#engine/model/fixture-type.ts';
import type { Rig } from '#engine/model/rig.ts';
import type { PlanRefusal } from '#engine/patch/plan-refusal.ts';
import { type MatchedBy, type ModePair, matchModes, takeTypePlan } from '#engine/patch/take-type-plan.ts';
import type { LibraryRevision } from '#engine/type/pin.ts';

/** One mode of a rig and what it is taken for; empty when it is left as it is. */
export interface Choice {
  readonly mode: string;
  readonly footprints: readonly number[] | null;
  readonly is: string;
  readonly by: MatchedBy | 'person' | null;
}

/** What each mode of a type of a rig is taken for at first. */
export function firstChoices(rig: Rig, type: string, revision: LibraryRevision): readonly Choice[] {
  return matchModes(rig, type, revision).map((match) => ({ ...match, is: match.is ?? '' }));
}

/** For a type that is new to the rig: every mode of the library under its own name, all of them when they are few. */
export function newChoices({ type }: LibraryRevision): readonly Choice[] {
  const few = type.modes.length <= MODES_TAKEN;
  return type.modes.map(({ name }) => ({ mode: name, footprints: null, is: few ? name : '', by: null }));
}

/** A type with more modes than this is asked about, mode by mode. */
const MODES_TAKEN = 4;

/** How a rig calls a type it has not had before. */
export const nameInRig = ({ maker, model }: FixtureType): string =>
  maker === 'Generic' ? model : `${maker} ${model}`.trim();

export function planOfChoices(
  rig: Rig,
  type: string,
  revision: LibraryRevision,
  choices: readonly Choice[],
): Result<Plan, PlanRefusal> {
  const modes: readonly ModePair[] = choices.filter(({ is }) => is !== '');
  return takeTypePlan(rig, { type, revision, modes });
}
