import type { Motion } from '../../grid/selection.ts';
import { CHART_COLUMNS, type ChartColumn } from './chart-columns.ts';

export interface ChartCell {
  /** The id of a row. */
  readonly row: string;
  readonly column: ChartColumn;
}

/** A rectangle of cells. `cursor` is the cell that typing goes to; `corner` the opposite corner, often the same cell. */
export interface ChartSelection {
  readonly cursor: ChartCell;
  readonly corner: ChartCell;
}

/** The ids of the rows, in order. */
type Rows = readonly string[];

export const selectCell = (cell: ChartCell): ChartSelection => ({ cursor: cell, corner: cell });

/** The selection after a motion; it stays within the chart. */
export function moveSelection(rows: Rows, selection: ChartSelection, motion: Motion): ChartSelection {
  const from = motion.how === 'stretch' ? selection.corner : selection.cursor;
  const line = clamp(Math.max(0, rows.indexOf(from.row)) + motion.lines, rows.length);
  const at = clamp(CHART_COLUMNS.indexOf(from.column) + motion.columns, CHART_COLUMNS.length);
  const to = { row: rows[line] ?? from.row, column: CHART_COLUMNS[at] ?? from.column };
  return motion.how === 'stretch' ? { ...selection, corner: to } : selectCell(to);
}

const clamp = (at: number, count: number) => Math.max(0, Math.min(count - 1, at));

/** The cell after (`step` 1) or before (-1) in reading order; undefined past the last or first. */
export function cellAfter(rows: Rows, from: ChartCell, step: 1 | -1): ChartCell | undefined {
  const beside = CHART_COLUMNS[CHART_COLUMNS.indexOf(from.column) + step];
  if (beside !== undefined) return { row: from.row, column: beside };
  const row = rows[rows.indexOf(from.row) + step];
  const column = CHART_COLUMNS.at(step === 1 ? 0 : -1);
  return row === undefined || column === undefined ? undefined : { row, column };
}

export function selectAll(rows: Rows, selection: ChartSelection | undefined): ChartSelection | undefined {
  const [first, last] = [rows[0], rows.at(-1)];
  if (first === undefined || last === undefined) return selection;
  return { cursor: { row: first, column: 'slots' }, corner: { row: last, column: 'repeat' } };
}

/** A selection in lines and column numbers, first to last, both counted in. */
export interface ChartSpan {
  readonly top: number;
  readonly bottom: number;
  readonly left: number;
  readonly right: number;
}

/** Where a selection lies; undefined when there is none, or a corner of it is in a row that is gone. */
export function spanOf(rows: Rows, selection: ChartSelection | undefined): ChartSpan | undefined {
  if (selection === undefined) return undefined;
  const lines = [rows.indexOf(selection.cursor.row), rows.indexOf(selection.corner.row)];
  const sides = [CHART_COLUMNS.indexOf(selection.cursor.column), CHART_COLUMNS.indexOf(selection.corner.column)];
  const top = Math.min(...lines);
  return top < 0 ? undefined : { top, bottom: Math.max(...lines), left: Math.min(...sides), right: Math.max(...sides) };
}

/**
 * A selection that lies in the chart again after rows went: the same when it still does, else the cell nearest to `line`,
 * where the cursor last stood; undefined in a chart without rows.
 */
export function mendSelection(
  rows: Rows,
  selection: ChartSelection | undefined,
  line: number,
): ChartSelection | undefined {
  if (spanOf(rows, selection) !== undefined) return selection;
  const wanted = selection?.cursor;
  const row = wanted !== undefined && rows.includes(wanted.row) ? wanted.row : rows[clamp(line, rows.length)];
  return row === undefined ? undefined : selectCell({ row, column: wanted?.column ?? 'slots' });
}
