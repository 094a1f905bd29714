import { PERSON_FIELDS } from '#engine/model/field.ts';
import type { Fixture } from '#engine/model/fixture.ts';
import { foldName } from '#engine/model/ids.ts';
import type { Rig } from '#engine/model/rig.ts';
import { cellText } from './cell-text.ts';
import type { IsFlagged } from './row-order.ts';
import type { Filter } from './view.ts';

/** Whether a filter lets a row through. Depends on the row, its mode and its findings alone. */
export function isShown(rig: Rig, fixture: Fixture, filter: Filter, isFlagged: IsFlagged): boolean {
  if (filter.flagged && !isFlagged(fixture.id)) return false;
  const sought = foldName(filter.text);
  if (sought === '') return true;
  if (filter.column === 'any') return rowText(rig, fixture).includes(sought);
  return foldName(cellText(rig, fixture, filter.column)).includes(sought);
}

// A row is the same object until it changes, so that a long sheet is folded once and not at every letter typed.
const folded = new WeakMap<Fixture, string>();

/** Everything a person wrote in a row, folded, a line for each cell: what is sought is never found across two of them. */
export function rowText(rig: Rig, fixture: Fixture): string {
  const known = folded.get(fixture);
  if (known !== undefined) return known;
  const text = PERSON_FIELDS.map((field) => foldName(cellText(rig, fixture, field))).join('\n');
  folded.set(fixture, text);
  return text;
}
