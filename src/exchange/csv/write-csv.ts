import { guardText } from './formula-guard.ts';

/** A cell on its way out: numbers are written as numbers, text is guarded against being taken for a formula. */
export type CsvCell = string | number | null;

const CHUNK = 32_768;

/**
 * Rows as CSV, in chunks of text: RFC 4180, lines ended by CR LF, every line of `width` cells. Cells with any delimiter,
 * quote, line break or outer space are quoted, whatever a reader takes for the delimiter.
 */
export function* writeCsv(rows: Iterable<readonly CsvCell[]>, width: number): Generator<string> {
  let text = '';
  for (const row of rows) {
    for (let i = 0; i < width; i++) {
      if (i > 0) text += ',';
      const cell = row[i];
      if (cell === null || cell === undefined || cell === '') continue;
      text += typeof cell === 'number' ? cell : quoteCell(guardText(cell));
    }
    text += '\r\n';
    if (text.length >= CHUNK) {
      yield text;
      text = '';
    }
  }
  if (text !== '') yield text;
}

const NEEDS_QUOTES = /[",;|\t\r\n]|^\s|\s$/;

function quoteCell(text: string): string {
  return NEEDS_QUOTES.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** Chunks of text as UTF-8 bytes, with a byte order mark on request: some spreadsheets need one to see UTF-8. */
export function* encodeChunks(
  chunks: Iterable<string>,
  mark: 'no-mark' | 'byte-order-mark',
): Generator<Uint8Array<ArrayBuffer>> {
  const encoder = new TextEncoder();
  if (mark === 'byte-order-mark') yield encoder.encode('\ufeff');
  for (const chunk of chunks) yield encoder.encode(chunk);
}
