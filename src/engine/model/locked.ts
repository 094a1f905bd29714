import { getRow } from '#base/table.ts';
import { isAddressField } from './cell-text.ts';
import type { Edit } from './edit.ts';
import type { Fixture } from './fixture.ts';
import type { FixtureId } from './ids.ts';
import { cellOf } from './read-fixture.ts';
import type { Rig } from './rig.ts';

/** Whether no plan may change its addresses: its `lock` holds text, which says why, or who said so. [LK1] */
export const isLocked = ({ lock }: Pick<Fixture, 'lock'>) => lock.trim() !== '';

/** The first unit, in the order of the edits, that is locked and of which an address would change. [LK2] */
export function lockedAgainst(rig: Rig, edits: readonly Edit[]): FixtureId | undefined {
  for (const edit of edits) {
    if (edit.kind !== 'set-cell' || !isAddressField(edit.field)) continue;
    const fixture = getRow(rig.fixtures, edit.fixture);
    if (fixture !== undefined && isLocked(fixture) && cellOf(fixture, edit.field) !== edit.value) return edit.fixture;
  }
  return undefined;
}
