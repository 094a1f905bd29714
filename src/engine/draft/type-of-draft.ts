import type { FixtureType, Part, TypeMode } from '../model/fixture-type.ts';
import { reachedParts } from '../type/reached-parts.ts';
import { cellText } from './cell-text.ts';
import { createChartBodies } from './chart-bodies.ts';
import type { Draft, DraftMode } from './draft.ts';
import type { DraftTrouble } from './draft-trouble.ts';
import { type DraftedMode, modeAsKept, modeOfChart } from './drafted-mode.ts';
import { factsOfDraft } from './facts-of-draft.ts';
import { troublesOfModes } from './mode-troubles.ts';

/**
 * The fixture type that a draft says, and what is wrong with it. Total: any draft gives a type; what cannot be read is left
 * out and named. `base` is the revision it starts from, whose modes it may keep.
 */
export function typeOfDraft(
  draft: Draft,
  base: FixtureType | null,
): { readonly type: FixtureType; readonly troubles: readonly DraftTrouble[] } {
  const { facts, troubles } = factsOfDraft(draft.facts, base);
  const kept = draft.modes.map((mode) => keptFrom(base, mode));
  const keptParts = base === null ? [] : partsKept(base, kept);
  const bodies = createChartBodies(keptParts.map((part) => part.name));
  const modes = draft.modes.map((mode, at): DraftedMode => {
    const own = kept[at];
    return own === undefined || base === null ? modeOfChart(mode, bodies.bodyOf) : modeAsKept(mode, own, base);
  });
  const type: FixtureType = {
    ...facts,
    guid: base?.guid ?? '',
    parts: [...keptParts, ...bodies.parts],
    modes: modes.map((each) => each.mode),
  };
  return { type, troubles: [...troubles, ...troublesOfModes(draft, modes)] };
}

function keptFrom(base: FixtureType | null, mode: DraftMode): TypeMode | undefined {
  return mode.kept === '' ? undefined : base?.modes.find((each) => cellText(each.name) === mode.kept);
}

/** Parts that only modes which are not kept can reach are left out. */
function partsKept(base: FixtureType, kept: readonly (TypeMode | undefined)[]): readonly Part[] {
  const modes = kept.flatMap((mode) => mode ?? []);
  if (modes.length === 0) return [];
  const rootsOf = (some: readonly TypeMode[]) => some.map((mode) => mode.root);
  const ofModes = reachedParts(base.parts, rootsOf(base.modes));
  const nobodys = base.parts.filter((part) => !ofModes.has(part.name)).map((part) => part.name);
  const stay = reachedParts(base.parts, [...rootsOf(modes), ...nobodys]);
  return base.parts.filter((part) => stay.has(part.name));
}
