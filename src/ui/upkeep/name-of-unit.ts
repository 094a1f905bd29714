import { getRow } from '#base/table.ts';
import type { Rig } from '#engine/model/rig.ts';
import { unitName } from '#words/findings.ts';
import { UPKEEP_WORDS as words } from '#words/upkeep.ts';

/** What the unit of a card is called now, or was when it was written. */
export function nameOfUnit(rig: Rig, card: { readonly unit: string; readonly called: string }): string {
  const fixture = getRow(rig.fixtures, card.unit);
  return fixture === undefined ? words.goneUnit(card.called) : unitName(fixture);
}
