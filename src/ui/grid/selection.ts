import type { FixtureId } from '#engine/model/ids.ts';
import type { ColumnId } from '../live/rows/column.ts';
import { lineAt, lineCount, lineOf, rowNear, rowsBetween } from '../live/rows/lines.ts';
import type { RowOrder } from '../live/rows/row-order.ts';

export interface CellRef {
  readonly row: FixtureId;
  readonly column: ColumnId;
}

/** A rectangle of cells. `cursor` is the cell that typing goes to; `corner` the opposite corner, often the same cell. */
export interface Selection {
  readonly cursor: CellRef;
  readonly corner: CellRef;
}

/** What a selection moves over: the rows in order, and the columns shown. */
export interface Ground {
  readonly order: RowOrder;
  readonly columns: readonly ColumnId[];
}

/** Steps in lines and columns, negative up and left; infinite to the edge. */
export interface Motion {
  readonly lines: number;
  readonly columns: number;
  /** `stretch` keeps the cursor and moves the corner. */
  readonly how: 'go' | 'stretch';
}

export const selectCell = (cell: CellRef): Selection => ({ cursor: cell, corner: cell });

export const stretchTo = (selection: Selection, corner: CellRef): Selection => ({ ...selection, corner });

/** The selection after a motion: stays within the sheet and steps over headings. */
export function moveSelection(ground: Ground, selection: Selection, motion: Motion): Selection {
  const from = motion.how === 'stretch' ? selection.corner : selection.cursor;
  const to = stepFrom(ground, from, motion);
  return motion.how === 'stretch' ? stretchTo(selection, to) : selectCell(to);
}

function stepFrom({ order, columns }: Ground, from: CellRef, motion: Motion): CellRef {
  const line = Math.max(0, lineOf(order, from.row));
  const way = motion.lines < 0 ? -1 : 1;
  const row = motion.lines === 0 ? from.row : rowNear(order.layout, clampLine(order, line + motion.lines), way);
  const at = Math.max(0, columns.indexOf(from.column));
  const column = columns[Math.max(0, Math.min(columns.length - 1, at + motion.columns))];
  return { row: row ?? from.row, column: column ?? from.column };
}

const clampLine = (order: RowOrder, line: number) => Math.max(0, Math.min(lineCount(order.layout) - 1, line));

/** The cell after (`step` 1) or before (-1) in reading order; undefined past the last or first. */
export function cellAfter({ order, columns }: Ground, from: CellRef, step: 1 | -1): CellRef | undefined {
  const at = columns.indexOf(from.column) + step;
  const beside = columns[at];
  if (beside !== undefined) return { row: from.row, column: beside };
  const line = nextRowLine(order, lineOf(order, from.row), step);
  const column = columns.at(step === 1 ? 0 : -1);
  return line === undefined || column === undefined ? undefined : { row: line, column };
}

function nextRowLine(order: RowOrder, from: number, step: 1 | -1): FixtureId | undefined {
  for (let at = from + step; at >= 0 && at < lineCount(order.layout); at += step) {
    const line = lineAt(order.layout, at);
    if (line?.kind === 'row') return line.id;
  }
  return undefined;
}

/** The whole sheet, with the cursor where it was. */
export function selectAll({ order, columns }: Ground, selection: Selection): Selection {
  const first = rowNear(order.layout, 0, 1);
  const last = rowNear(order.layout, lineCount(order.layout) - 1, -1);
  const left = columns[0];
  const right = columns.at(-1);
  if (first === undefined || last === undefined || left === undefined || right === undefined) return selection;
  return { cursor: { row: first, column: left }, corner: { row: last, column: right } };
}

/** A selection in lines and column numbers, first to last, both counted in. */
export interface Span {
  readonly top: number;
  readonly bottom: number;
  readonly left: number;
  readonly right: number;
}

/** Where a selection lies; undefined when a corner of it is not shown. */
export function spanOf({ order, columns }: Ground, { cursor, corner }: Selection): Span | undefined {
  const lines = [lineOf(order, cursor.row), lineOf(order, corner.row)];
  const sides = [columns.indexOf(cursor.column), columns.indexOf(corner.column)];
  const [top, bottom, left, right] = [Math.min(...lines), Math.max(...lines), Math.min(...sides), Math.max(...sides)];
  return top < 0 || left < 0 ? undefined : { top, bottom, left, right };
}

export function selectedRows(ground: Ground, selection: Selection): readonly FixtureId[] {
  const span = spanOf(ground, selection);
  return span === undefined ? [] : rowsBetween(ground.order.layout, span.top, span.bottom);
}

export function selectedColumns(ground: Ground, selection: Selection): readonly ColumnId[] {
  const span = spanOf(ground, selection);
  return span === undefined ? [] : ground.columns.slice(span.left, span.right + 1);
}

/**
 * A selection that lies in the sheet again after rows or columns went: the same when it still does, else the cell nearest
 * to `line`, where the cursor last stood; undefined when there is no row at all.
 */
export function mendSelection(ground: Ground, selection: Selection | undefined, line: number): Selection | undefined {
  if (selection && spanOf(ground, selection)) return selection;
  const wanted = selection?.cursor;
  const row = wanted && lineOf(ground.order, wanted.row) >= 0 ? wanted.row : rowNear(ground.order.layout, line, 1);
  const column = wanted && ground.columns.includes(wanted.column) ? wanted.column : ground.columns[0];
  return row === undefined || column === undefined ? undefined : selectCell({ row, column });
}
