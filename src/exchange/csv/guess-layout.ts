import type { Grid, GridRow } from '#engine/list/grid.ts';
import type { Layout, LayoutColumn, RememberedMapping } from '#engine/list/layout.ts';
import type { Meaning } from '#engine/list/meaning.ts';
import { PATCH_COLUMNS, PATCH_HEADINGS } from '#engine/sheet/patch-format.ts';
import { columnFacts } from './column-facts.ts';
import { guessMeanings } from './guess-meanings.ts';
import { findHeadingRow } from './heading-row.ts';
import { isTotalWord } from './list-words.ts';
import { mappingKey } from './mapping-memory.ts';

// More rows than these tell nothing new of what a column holds.
const TELLING_ROWS = 2000;

/** How a list is most likely to be read: the heading row found, each column's meaning guessed or, when known, `remembered`. */
export function guessLayout(grid: Grid, remembered?: RememberedMapping): Layout {
  const layout = layoutWithHeading(grid, findHeadingRow(grid));
  return remembered === undefined || layout.form === 'own' ? layout : withRemembered(layout, remembered);
}

/** The same for a heading row that the person points out; null when the list has none. */
export function layoutWithHeading(grid: Grid, headingRow: number | null): Layout {
  const cells = headingRow === null ? [] : (grid.rows[headingRow]?.cells ?? []);
  const headings = Array.from({ length: grid.width }, (_, column) => (cells[column] ?? '').replace(/\s+/g, ' ').trim());
  const own = headingRow === null ? undefined : ownColumns(headings);
  if (own !== undefined) return { form: 'own', headingRow, columns: own, blankPosition: 'blank' };
  const body = grid.rows
    .slice(headingRow === null ? 0 : headingRow + 1)
    .filter((row) => tells(row, headings))
    .slice(0, TELLING_ROWS);
  const facts = headings.map((_, column) => columnFacts(body.map((row) => row.cells[column] ?? '')));
  return { form: 'theirs', headingRow, columns: guessMeanings(headings, facts), blankPosition: 'blank' };
}

/** The layout with one column's meaning set by the person. */
export function withMeaning(layout: Layout, column: number, meaning: Meaning): Layout {
  const columns = layout.columns.map((each, i) =>
    i === column ? { ...each, meaning, because: 'person' as const } : each,
  );
  // A sheet of ours with a column turned to something else is no longer read as our own.
  return { ...layout, form: 'theirs', columns };
}

/** The layout as the crew settled it for a list with the same headings; itself when the headings are others. */
export function withRemembered(layout: Layout, remembered: RememberedMapping): Layout {
  if (remembered.key !== mappingKey(layout) || remembered.meanings.length > layout.columns.length) return layout;
  const columns = layout.columns.map((column, i): LayoutColumn => {
    const meaning = remembered.meanings[i];
    return meaning === undefined ? column : { ...column, meaning, because: 'remembered' };
  });
  return { ...layout, columns, blankPosition: remembered.blankPosition };
}

/** Whether a row can tell what its columns hold: not a single line, a sum, or the headings once more. */
function tells(row: GridRow, headings: readonly string[]): boolean {
  const [first, ...others] = row.cells.map((cell) => cell.trim()).filter((cell) => cell !== '');
  if (first === undefined || others.length === 0 || isTotalWord(first)) return false;
  return !row.cells.every((cell, i) => cell.trim() === '' || cell.trim() === headings[i]);
}

/** The meanings of a patch sheet of ours; undefined when the headings are not those of one. */
function ownColumns(headings: readonly string[]): readonly LayoutColumn[] | undefined {
  const columns = headings.map((heading): LayoutColumn => {
    const meaning = PATCH_COLUMNS.find((column) => PATCH_HEADINGS[column] === heading);
    return { heading, meaning: meaning ?? 'ignore', because: 'heading' };
  });
  const known = columns.filter((column) => column.meaning !== 'ignore').map((column) => column.meaning);
  const strange = columns.some((column) => column.meaning === 'ignore' && column.heading !== '');
  const whole = known.includes('order') && new Set(known).size === known.length;
  return whole && !strange ? columns : undefined;
}
