import type { Grid, GridRow } from '#engine/list/grid.ts';
import { knownHeadings } from './heading-words.ts';
import { readListAddress } from './list-address.ts';
import { readWhole } from './read-number.ts';

const SEARCHED = 60;

/** Index of the row that holds the headings, or null when no row looks like one. Title lines may stand before it. */
export function findHeadingRow(grid: Grid): number | null {
  let best: number | null = null;
  let most = 1.5;
  for (const [index, row] of grid.rows.slice(0, SEARCHED).entries()) {
    const score = headingScore(row);
    if (score > most) [best, most] = [index, score];
  }
  return best ?? headingByShape(grid);
}

function headingScore(row: GridRow): number {
  const filled = row.cells.filter((cell) => cell.trim() !== '');
  const known = knownHeadings(filled);
  return filled.length < 2 || known < filled.length / 3 ? 0 : known - filled.filter(isNumeric).length;
}

const isNumeric = (cell: string) =>
  readWhole(cell) !== undefined || readListAddress(cell, { padded: false, dashed: false }) !== undefined;

/** A row of words over columns of numbers: headings in words we do not know. */
function headingByShape(grid: Grid): number | null {
  const index = grid.rows.findIndex((row) => row.cells.filter((cell) => cell.trim() !== '').length >= 3);
  const row = grid.rows[index];
  if (row === undefined || row.cells.some(isNumeric)) return null;
  const body = grid.rows.slice(index + 1, index + 200).filter((each) => each.cells.length > 1);
  const numeric = row.cells.filter((cell, column) => {
    const values = body.map((each) => each.cells[column] ?? '').filter((value) => value.trim() !== '');
    return cell.trim() !== '' && values.length > 0 && values.filter(isNumeric).length / values.length > 0.6;
  });
  return numeric.length >= 2 ? index : null;
}
