import { ok, type Result, refuse } from '#base/result.ts';
import { DELIMITERS, type Delimiter, type Grid, type GridRefusal, type GridRow } from '#engine/list/grid.ts';
import { unguardText } from './formula-guard.ts';
import { guessDelimiter } from './guess-delimiter.ts';
import { LIST_LIMITS } from './limits.ts';
import { scanCells } from './scan-cells.ts';

/**
 * The rows and cells of a list's text, with the delimiter guessed. Trailing empty cells are cut off, and what
 * `write-csv` put before formula-like text is taken off again. Own scanner instead of a parsing library: it gives the
 * source line of each row, takes mixed line ends, and a quote that is never closed costs one cell, not the rest of the list.
 */
export function readGrid(text: string): Result<Grid, GridRefusal> {
  const delimiter = declaredDelimiter(text) ?? guessDelimiter(text);
  const scan = scanCells(text, delimiter, LIST_LIMITS.rows);
  if (scan.stopped) return refuse({ code: 'too-many-lines', limit: LIST_LIMITS.rows });
  const rows = scan.rows.map(tidyRow);
  const width = rows.reduce((widest, row) => Math.max(widest, row.cells.length), 0);
  const wide = rows.find((row) => row.cells.length > LIST_LIMITS.columns);
  if (wide !== undefined) return refuse({ code: 'too-many-columns', line: wide.line, limit: LIST_LIMITS.columns });
  if (width === 0) return refuse({ code: 'no-text' });
  return ok({ rows, width, delimiter, cautions: scan.cautions });
}

/** A first line `sep=;`, as some spreadsheets write and read it. */
function declaredDelimiter(text: string): Delimiter | undefined {
  const declared = /^sep=([,;\t|])\r?\n/i.exec(text)?.[1];
  return DELIMITERS.find((delimiter) => delimiter === declared);
}

function tidyRow(row: GridRow): GridRow {
  let length = row.cells.length;
  while (length > 0 && row.cells[length - 1] === '') length -= 1;
  return { line: row.line, cells: row.cells.slice(0, length).map(unguardText) };
}
