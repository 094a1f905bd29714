import type { GridRow } from '#engine/list/grid.ts';

/** A row's cells in one line of text. */
export function textOf(row: GridRow): string {
  return row.cells
    .map((cell) => cell.trim())
    .filter((cell) => cell !== '')
    .join(' | ');
}
