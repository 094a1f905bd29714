import type { Grid } from '#engine/list/grid.ts';
import type { Layout } from '#engine/list/layout.ts';
import type { Meaning } from '#engine/list/meaning.ts';
import { CELL_LIMIT } from '#engine/model/field.ts';
import { END_MARK } from '#engine/sheet/patch-format.ts';
import { isPageWord, isPositionWord, isTotalWord, positionNamed, universeNamed } from './list-words.ts';
import { isBlankMark, readWhole } from './read-number.ts';

/** What a line of the list is, before its cells are read. `heading` of a fixture line is the position named above it. */
export type SortedLine =
  | { readonly kind: 'blank' | 'title' | 'heading' | 'total' | 'foot' | 'unread' }
  | { readonly kind: 'position'; readonly position: string; readonly column: number }
  | { readonly kind: 'universe'; readonly universe: number; readonly column: number }
  | { readonly kind: 'fixture'; readonly heading: string; readonly universe: number | null };

interface Cell {
  readonly column: number;
  readonly text: string;
}

type Kind =
  | { readonly kind: Exclude<SortedLine['kind'], 'position' | 'universe' | 'fixture'> }
  | Extract<SortedLine, { kind: 'position' | 'universe' }>
  | { readonly kind: 'fixture' };

// A line without any of these is no fixture: an address or a quantity alone says nothing of what it belongs to.
const MAKES_FIXTURE = new Set<Meaning>(['channel', 'unit', 'type', 'mode']);

/** Sorts the rows of a list: fixtures, and the titles, headings, sums and blank lines between them. One answer for each row. */
export function sortLines(grid: Grid, layout: Layout): readonly SortedLine[] {
  const kinds: Kind[] = [];
  const sheet = lookAt(grid, layout);
  for (const [index, row] of grid.rows.entries()) {
    const cells = row.cells
      .map((text, column): Cell => ({ column, text: text.trim() }))
      .filter(({ text }) => text !== '');
    kinds.push(kinds[index - 1]?.kind === 'foot' ? { kind: 'foot' } : kindOf(index, cells, sheet));
  }
  settleTitles(grid, layout, kinds);
  return carryDown(grid, layout, kinds);
}

interface Sheet {
  readonly layout: Layout;
  /** The first column that holds anything. */
  readonly firstColumn: number;
  readonly meaning: (cell: Cell) => Meaning;
}

function lookAt(grid: Grid, layout: Layout): Sheet {
  const firsts = grid.rows
    .map((row) => row.cells.findIndex((cell) => cell.trim() !== ''))
    .filter((column) => column >= 0);
  const firstColumn = firsts.reduce((least, column) => Math.min(least, column), grid.width);
  return { layout, firstColumn, meaning: (cell) => layout.columns[cell.column]?.meaning ?? 'ignore' };
}

function kindOf(index: number, cells: readonly Cell[], sheet: Sheet): Kind {
  const { layout, meaning } = sheet;
  const [first] = cells;
  if (first === undefined) return { kind: 'blank' };
  if (layout.headingRow !== null && index < layout.headingRow) return { kind: 'title' };
  if (index === layout.headingRow || isRepeatedHeading(cells, layout)) return { kind: 'heading' };
  if (cells.length === 1 && first.text === END_MARK) return { kind: 'foot' };
  if (cells.length === 1 && isPageWord(first.text)) return { kind: 'title' };
  if (/^sep=[,;\t|]?$/.test(first.text)) return { kind: 'title' };
  const place = placeNamed(cells, first, sheet);
  if (isTotalWord(first.text) && !tellsMore(cells, first, meaning)) return { kind: 'total' };
  if (place !== undefined) return place;
  const makes = cells.some((cell) => MAKES_FIXTURE.has(meaning(cell)) && !isBlankMark(cell.text));
  return { kind: makes ? 'fixture' : 'unread' };
}

// Cells that only a fixture has: with words or an address in one of them, `Total` is a name, not a sum.
const TELLING = new Set<Meaning>(['type', 'mode', 'address', 'slot', 'absolute']);

function tellsMore(cells: readonly Cell[], first: Cell, meaning: (cell: Cell) => Meaning): boolean {
  return cells.some((cell) => cell !== first && TELLING.has(meaning(cell)) && !/^[\d\s.,]*$/.test(cell.text));
}

function isRepeatedHeading(cells: readonly Cell[], layout: Layout): boolean {
  if (layout.headingRow === null || cells.length < 2) return false;
  const same = cells.filter((cell) => layout.columns[cell.column]?.heading.toLowerCase() === cell.text.toLowerCase());
  return same.length >= 2 && same.length >= cells.length * 0.8;
}

/** A line that names a position or universe for the lines below it; undefined when it is nothing of the kind. */
function placeNamed(cells: readonly Cell[], first: Cell, sheet: Sheet): Kind | undefined {
  const nameless = first.text.length > CELL_LIMIT || isBlankMark(first.text) || readWhole(first.text) !== undefined;
  if (nameless) return undefined;
  const own = sheet.meaning(first);
  if (cells.length === 1) {
    const universe = universeNamed(first.text);
    if (universe !== undefined) return { kind: 'universe', universe, column: first.column };
    if (!mayName(first, own, sheet)) return undefined;
    return { kind: 'position', position: positionNamed(first.text), column: first.column };
  }
  const [, second] = cells;
  if (
    cells.length === 2 &&
    second !== undefined &&
    isPositionWord(first.text) &&
    readWhole(second.text) === undefined
  ) {
    return { kind: 'position', position: second.text, column: second.column };
  }
  // `Bridge 1;;;12 units`: words where a number should be, and nothing that makes a fixture.
  const numbered = own === 'unit' || own === 'channel';
  const others = cells.some((cell) => cell !== first && MAKES_FIXTURE.has(sheet.meaning(cell)));
  if (!numbered || others || cells.length > 3 || !/\p{L}{2}/u.test(first.text)) return undefined;
  return { kind: 'position', position: positionNamed(first.text), column: first.column };
}

/** Whether a lone cell can name a position: in the column of positions, or of a merged line, not among types or notes. */
function mayName(cell: Cell, own: Meaning, sheet: Sheet): boolean {
  if (own === 'position') return true;
  if (cell.column > sheet.firstColumn) return (own === 'unit' || own === 'channel') && !/\d/.test(cell.text);
  return own !== 'notes' || !sheet.layout.columns.some(({ meaning }) => meaning === 'position');
}

/** Single lines that turn out to be titles, and titles that turn out to name a position, once the whole list is seen. */
function settleTitles(grid: Grid, layout: Layout, kinds: Kind[]): void {
  const titles = new Set(
    grid.rows.flatMap((row, i) => (kinds[i]?.kind === 'title' ? [row.cells.join('').trim()] : [])),
  );
  let perTable = false;
  for (const [index, kind] of kinds.entries()) {
    if (kind.kind !== 'position') continue;
    const text = (grid.rows[index]?.cells ?? []).join('').trim();
    if (titles.has(text)) kinds[index] = { kind: 'title' };
    else if (kinds[nextFilled(kinds, index)]?.kind === 'heading') perTable = true;
  }
  const hasPosition = layout.columns.some((column) => column.meaning === 'position');
  if (perTable && !hasPosition && layout.headingRow !== null) nameFirstTable(grid, layout.headingRow, kinds);
  if (layout.headingRow === null) settleFirstTitles(kinds);
  settleLastTitles(kinds);
}

function nextFilled(kinds: readonly Kind[], index: number): number {
  let next = index + 1;
  while (kinds[next]?.kind === 'blank') next += 1;
  return next;
}

/** Where each table of a list has its position above its headings, the line above the first headings is a position too. */
function nameFirstTable(grid: Grid, headingRow: number, kinds: Kind[]): void {
  for (let index = headingRow - 1; index >= 0; index--) {
    const cells = (grid.rows[index]?.cells ?? []).filter((cell) => cell.trim() !== '');
    const [only] = cells;
    if (only === undefined) continue;
    if (cells.length === 1) kinds[index] = { kind: 'position', position: positionNamed(only), column: 0 };
    return;
  }
}

/** In a list without headings, of the single lines before the first fixture only the last can name a position. */
function settleFirstTitles(kinds: Kind[]): void {
  const first = kinds.findIndex((kind) => kind.kind === 'fixture');
  const named = kinds.slice(0, Math.max(0, first)).flatMap((kind, index) => (kind.kind === 'position' ? [index] : []));
  for (const index of named.slice(0, -1)) kinds[index] = { kind: 'title' };
}

/** Single lines behind the last fixture name nothing any more: who printed it, when, a legend. */
function settleLastTitles(kinds: Kind[]): void {
  const last = kinds.findLastIndex((kind) => kind.kind === 'fixture');
  for (let index = last + 1; index < kinds.length; index++) {
    if (kinds[index]?.kind === 'position') kinds[index] = { kind: 'title' };
  }
}

/** Gives each fixture line the position and universe named above it. A line with a position of its own ends the naming. */
function carryDown(grid: Grid, layout: Layout, kinds: readonly Kind[]): readonly SortedLine[] {
  const columns = layout.columns.flatMap((column, index) => (column.meaning === 'position' ? [index] : []));
  let heading = '';
  let universe: number | null = null;
  return kinds.map((kind, index): SortedLine => {
    if (kind.kind === 'position') heading = kind.position;
    if (kind.kind === 'universe') universe = kind.universe;
    if (kind.kind !== 'fixture') return kind;
    const own = columns.map((column) => grid.rows[index]?.cells[column]?.trim() ?? '').filter((text) => text !== '');
    if (own.length > 0) heading = layout.blankPosition === 'as-above' ? own.join(' ') : '';
    return { kind: 'fixture', heading, universe };
  });
}
