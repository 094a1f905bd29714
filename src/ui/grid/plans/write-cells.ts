import { getRow } from '#base/table.ts';
import { parseCellText } from '#engine/model/cell-text.ts';
import type { Edit, Plan, PlanName } from '#engine/model/edit.ts';
import type { CellValue, PersonField } from '#engine/model/field.ts';
import type { FixtureId } from '#engine/model/ids.ts';
import { cellOf } from '#engine/model/read-fixture.ts';
import type { Rig } from '#engine/model/rig.ts';
import type { ColumnId } from '../../live/rows/column.ts';

/** Some cells of the sheet: every row in every column. */
export interface CellBlock {
  readonly rows: readonly FixtureId[];
  readonly columns: readonly ColumnId[];
}

/** Puts one typed text into every cell of a block; undefined when that changes nothing. */
export function writeCells(rig: Rig, block: CellBlock, text: string): Plan | undefined {
  return planOf(
    'edit',
    setEach(rig, block, (field) => parseCellText(field, text)),
  );
}

/** Empties every cell of a block; undefined when all are empty. */
export function clearCells(rig: Rig, block: CellBlock): Plan | undefined {
  return planOf(
    'edit',
    setEach(rig, block, () => null),
  );
}

function setEach(rig: Rig, { rows, columns }: CellBlock, valueFor: (field: PersonField) => CellValue): Edit[] {
  const fields = columns.filter(isWritable);
  return rows.flatMap((row) => fields.flatMap((field) => setCell(rig, row, field, valueFor(field))));
}

export const isWritable = (column: ColumnId): column is PersonField => column !== 'footprint';

/** The edit that makes a cell hold a value: none when it does already, or when its row is gone. */
export function setCell(rig: Rig, row: FixtureId, field: PersonField, value: CellValue): readonly Edit[] {
  const fixture = getRow(rig.fixtures, row);
  if (fixture === undefined || cellOf(fixture, field) === value) return [];
  return [{ kind: 'set-cell', fixture: row, field, value }];
}

/** A plan of these edits; undefined when there are none. */
export function planOf(name: PlanName, edits: readonly Edit[]): Plan | undefined {
  return edits.length === 0 ? undefined : { name, edits };
}
