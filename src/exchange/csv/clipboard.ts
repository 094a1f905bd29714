import { guardText, unguardText } from './formula-guard.ts';
import { LIST_LIMITS } from './limits.ts';
import { scanCells } from './scan-cells.ts';

/**
 * The cells of text copied from a spreadsheet: rows by line, cells by tab, a cell with a tab or line break of its own in
 * quotes. All rows have the same width. `limit` says that rows beyond the limit were left out.
 */
export function parsePasted(text: string): { readonly cells: readonly (readonly string[])[]; readonly cut: boolean } {
  const scan = scanCells(text, '\t', LIST_LIMITS.rows);
  const width = scan.rows.reduce((widest, row) => Math.max(widest, row.cells.length), 1);
  const cells = scan.rows.map((row) => Array.from({ length: width }, (_, i) => unguardText(row.cells[i] ?? '')));
  return { cells, cut: scan.stopped };
}

/** Cells as text for the clipboard, for any spreadsheet: `parsePasted(formatCopied(grid)).cells` is `grid`. */
export function formatCopied(grid: readonly (readonly string[])[]): string {
  return grid.map((row) => `${row.map(formatCopiedCell).join('\t')}\n`).join('');
}

function formatCopiedCell(text: string): string {
  const guarded = guardText(text);
  return /[\t\r\n]|^"/.test(guarded) ? `"${guarded.replaceAll('"', '""')}"` : guarded;
}
