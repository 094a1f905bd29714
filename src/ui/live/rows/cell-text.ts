import { formatCell } from '#engine/model/cell-text.ts';
import type { Fixture } from '#engine/model/fixture.ts';
import { cellOf } from '#engine/model/read-fixture.ts';
import type { Rig } from '#engine/model/rig.ts';
import type { ColumnId } from './column.ts';
import { footprintOf } from './compare-rows.ts';

/** What stands in a cell of the sheet, as a person reads it and may type it back; empty text when nothing does. */
export function cellText(rig: Rig, fixture: Fixture, column: ColumnId): string {
  return column === 'footprint' ? String(footprintOf(rig, fixture)) : formatCell(column, cellOf(fixture, column));
}
