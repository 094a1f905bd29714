import type { MakeId } from '#base/random-id.ts';
import { ok, type Result, refuse } from '#base/result.ts';
import { parseCellText } from '#engine/model/cell-text.ts';
import type { Edit, Plan } from '#engine/model/edit.ts';
import type { CellValue, PersonField } from '#engine/model/field.ts';
import type { FixtureId } from '#engine/model/ids.ts';
import type { Rig } from '#engine/model/rig.ts';
import { rowsInOrder } from '#engine/model/row-order.ts';
import { insertPlan, ROWS_AT_ONCE } from '#engine/patch/row-plans.ts';
import type { ColumnId } from '../../live/rows/column.ts';
import { isWritable, planOf, setCell } from './write-cells.ts';

/** Where a paste goes: the rows from the cell down, the columns from the cell right, and how much of both is selected. */
export interface PasteTarget {
  readonly rows: readonly FixtureId[];
  readonly columns: readonly ColumnId[];
  readonly selectedRows: number;
  readonly selectedColumns: number;
}

export interface Pasted {
  /** Undefined when every cell holds already what is pasted. */
  readonly plan: Plan | undefined;
  /** Cells that fell past the last column, or on a column nobody writes: they are not pasted, and the person is told. */
  readonly leftOut: number;
}

type Texts = readonly (readonly string[])[];
type PastedCell = readonly [field: PersonField, value: CellValue];

export interface PasteRefusal {
  readonly code: 'too-many-rows';
  readonly count: number;
  readonly limit: number;
}

/**
 * Pastes rows of text. A block pasted over a selection that it fits a whole number of times is repeated to fill it; past
 * the last row new rows are made at the end, none for a line that holds nothing. All or nothing.
 */
export function pasteCells(rig: Rig, target: PasteTarget, texts: Texts, makeId: MakeId): Result<Pasted, PasteRefusal> {
  const block = repeat(texts, target);
  const rows = block.map((row) => readRow(target.columns, row));
  const over = block.map((row) => row.filter((text, m) => text !== '' && !hasPlace(target.columns[m])).length);
  const edits = target.rows.flatMap((id, n) =>
    (rows[n] ?? []).flatMap(([field, value]) => setCell(rig, id, field, value)),
  );
  const fresh = rows.slice(target.rows.length).filter((cells) => cells.some(([, value]) => value !== null));
  if (fresh.length > ROWS_AT_ONCE) return refuse({ code: 'too-many-rows', count: fresh.length, limit: ROWS_AT_ONCE });
  return ok({
    plan: planOf('paste', [...edits, ...addRows(rig, fresh, makeId)]),
    leftOut: over.reduce((sum, count) => sum + count, 0),
  });
}

const hasPlace = (column: ColumnId | undefined): boolean => column !== undefined && isWritable(column);

function readRow(columns: readonly ColumnId[], row: readonly string[]): readonly PastedCell[] {
  return row.flatMap((text, m) => {
    const column = columns[m];
    return column !== undefined && isWritable(column) ? [[column, parseCellText(column, text)] as const] : [];
  });
}

function addRows(rig: Rig, rows: readonly (readonly PastedCell[])[], makeId: MakeId): readonly Edit[] {
  if (rows.length === 0) return [];
  const after = rowsInOrder(rig).at(-1)?.id ?? null;
  const made = insertPlan(rig, { after, rows: rows.map((cells) => Object.fromEntries(cells)) }, makeId);
  if (!made.ok) throw new Error(`${rows.length} rows after ${after} refused: ${made.error.code}`);
  return made.value.edits;
}

function repeat(texts: Texts, target: PasteTarget): Texts {
  const width = texts.reduce((most, row) => Math.max(most, row.length), 0);
  if (texts.length === 0 || width === 0) return [];
  const down = timesIn(target.selectedRows, texts.length);
  const across = timesIn(target.selectedColumns, width);
  return Array.from({ length: texts.length * down }, (_, n) => {
    const row = texts[n % texts.length] ?? [];
    return Array.from({ length: width * across }, (_, m) => row[m % width] ?? '');
  });
}

const timesIn = (selected: number, size: number) => (selected % size === 0 ? Math.max(1, selected / size) : 1);
