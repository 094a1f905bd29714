import { getRow } from '#base/table.ts';
import type { FixtureId } from '#engine/model/ids.ts';
import type { Rig } from '#engine/model/rig.ts';
import { UPKEEP_WORDS as words } from '#words/upkeep.ts';
import { LinkButton } from '../kit/link-button.tsx';
import { nameOfUnit } from './name-of-unit.ts';

export interface UnitWordProps {
  readonly rig: Rig;
  /** What is written of the unit. */
  readonly card: { readonly unit: string; readonly called: string };
  readonly onUnit: (id: FixtureId) => void;
}

/** The name of a unit, and the way to everything of it while it is there. */
export function UnitWord({ rig, card, onUnit }: UnitWordProps) {
  const name = nameOfUnit(rig, card);
  if (getRow(rig.fixtures, card.unit) === undefined) return <span className="font-medium">{name}</span>;
  return (
    <LinkButton className="font-medium" aria-label={words.storyOf(name)} onClick={() => onUnit(card.unit as FixtureId)}>
      {name}
    </LinkButton>
  );
}
