import type { Delimiter, GridCaution, GridRow } from '#engine/list/grid.ts';

export interface Scan {
  readonly rows: readonly GridRow[];
  readonly cautions: readonly GridCaution[];
  /** Whether `maxRows` stopped the scan before the end of the text. */
  readonly stopped: boolean;
}

interface Quoted {
  readonly value: string;
  /** Index behind the closing quote and any spaces after it. */
  readonly end: number;
  readonly breaks: number;
  readonly stray: boolean;
}

// A text with this many quotes left open is not meant to have line breaks within quotes. Bounds the time as well.
const OPEN_QUOTES_FORGIVEN = 50;

interface Cursor {
  readonly text: string;
  readonly delimiter: Delimiter;
  readonly cautions: GridCaution[];
  at: number;
  line: number;
  /** Quotes left open so far. */
  open: number;
  /** End of the line that was last looked at. */
  lineEnd: number;
}

/**
 * Splits text into rows of cells: RFC 4180 with any of our delimiters and any line end, mixed ones too. A quote that is
 * never closed is an ordinary character, so that a slip in one line does not swallow the lines behind it.
 */
export function scanCells(text: string, delimiter: Delimiter, maxRows: number): Scan {
  const rows: GridRow[] = [];
  const cursor: Cursor = { text, delimiter, cautions: [], at: 0, line: 1, open: 0, lineEnd: -1 };
  while (cursor.at < text.length && rows.length < maxRows) {
    const line = cursor.line;
    rows.push({ line, cells: scanRow(cursor) });
    if (text[cursor.at - 1] === '\r' && text[cursor.at] === '\n') cursor.at += 1;
    cursor.line += 1;
  }
  return { rows, cautions: cursor.cautions, stopped: cursor.at < text.length };
}

/** The cells up to the end of the row; the cursor then stands behind the first character of the line end. */
function scanRow(cursor: Cursor): string[] {
  const { text, delimiter } = cursor;
  const cells: string[] = [];
  const openBefore = cursor.open;
  do {
    // Within a row whose quotes do not pair up, none is trusted any more.
    const quoted = cursor.open === openBefore ? scanQuoted(cursor, cells.length) : undefined;
    const end = quoted?.end ?? endOfPlain(text, cursor.at, delimiter);
    cells.push(quoted?.value ?? text.slice(cursor.at, end));
    cursor.at = end + 1;
  } while (text[cursor.at - 1] === delimiter);
  return cells;
}

/** The quoted cell at the cursor, or undefined when there is none or it is never closed. */
function scanQuoted(cursor: Cursor, column: number): Quoted | undefined {
  const { text, delimiter, cautions, line } = cursor;
  const opening = quoteAt(text, cursor.at, delimiter);
  if (opening < 0) return undefined;
  const quoted = readQuoted(cursor, opening);
  if (quoted === undefined) {
    cursor.open += 1;
    cautions.push({ code: 'quote-not-closed', line, column });
    return undefined;
  }
  if (quoted.stray) cautions.push({ code: 'stray-quote', line, column });
  cursor.line += quoted.breaks;
  return quoted;
}

/** Where a cell that begins at `at` opens a quote, spaces before it allowed; -1 when it does not. */
function quoteAt(text: string, at: number, delimiter: Delimiter): number {
  let from = at;
  if (delimiter !== '\t') while (text[from] === ' ') from += 1;
  return text[from] === '"' ? from : -1;
}

function endOfPlain(text: string, from: number, delimiter: Delimiter): number {
  const stop = delimiter.charCodeAt(0);
  for (let i = from; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (code === stop || code === 10 || code === 13) return i;
  }
  return text.length;
}

function readQuoted(cursor: Cursor, opening: number): Quoted | undefined {
  const { text, delimiter } = cursor;
  let stray = false;
  let from = opening + 1;
  for (;;) {
    const quote = text.indexOf('"', from);
    if (quote < 0) return undefined;
    if (text[quote + 1] === '"') {
      from = quote + 2;
      continue;
    }
    const end = skipSpaces(text, quote + 1, delimiter);
    const closes = end >= text.length || text[end] === delimiter || text[end] === '\n' || text[end] === '\r';
    if (!closes) {
      // Within one line a stray quote may be an inch mark; behind a line break it is the next quoted cell of a later line.
      if (quote > lineEnd(cursor, opening)) return undefined;
      stray = true;
      from = quote + 1;
      continue;
    }
    const inner = text.slice(opening + 1, quote);
    const breaks = inner.match(/\r\n|\r|\n/g)?.length ?? 0;
    if (breaks > 0 && (stray || cursor.open >= OPEN_QUOTES_FORGIVEN)) return undefined;
    return { value: inner.replaceAll('""', '"'), end, breaks, stray };
  }
}

/** The end of the line that `at` is on. Kept, since a line of many odd quotes asks for it at each of them. */
function lineEnd(cursor: Cursor, at: number): number {
  if (cursor.lineEnd >= at) return cursor.lineEnd;
  const { text } = cursor;
  let end = at;
  while (end < text.length && text[end] !== '\n' && text[end] !== '\r') end += 1;
  cursor.lineEnd = end;
  return end;
}

function skipSpaces(text: string, from: number, delimiter: Delimiter): number {
  let at = from;
  if (delimiter !== '\t') while (text[at] === ' ') at += 1;
  return at;
}
