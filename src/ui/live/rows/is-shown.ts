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
  const columns = filter.column === 'any' ? PERSON_FIELDS : [filter.column];
  return columns.some((column) => foldName(cellText(rig, fixture, column)).includes(sought));
}
