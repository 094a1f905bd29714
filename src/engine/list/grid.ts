/** One row of a list's text. `line` is the 1-based line of the source on which it begins. */
export interface GridRow {
  readonly line: number;
  readonly cells: readonly string[];
}

/** A list as rows of cells, before anything is known of their meaning. */
export interface Grid {
  readonly rows: readonly GridRow[];
  /** Cells of the widest row. */
  readonly width: number;
  readonly delimiter: Delimiter;
  readonly cautions: readonly GridCaution[];
}

export const DELIMITERS = [',', ';', '\t', '|'] as const;

export type Delimiter = (typeof DELIMITERS)[number];

/** Quotes that the text does not close, or closes oddly: read as plain characters. `column` is 0-based. */
export interface GridCaution {
  readonly code: 'quote-not-closed' | 'stray-quote';
  readonly line: number;
  readonly column: number;
}

export type GridRefusal =
  | { readonly code: 'no-text' }
  | { readonly code: 'too-many-lines'; readonly limit: number }
  | { readonly code: 'too-many-columns'; readonly line: number; readonly limit: number };

/** How the bytes of a list were written. `marked` when they began with a byte order mark. */
export interface DecodedText {
  readonly text: string;
  readonly encoding: TextEncoding;
  readonly marked: boolean;
  /** `cut-off`: the last character is incomplete; `replaced`: bytes that are no text stand as U+FFFD. */
  readonly cautions: readonly ('cut-off' | 'replaced')[];
}

export type TextEncoding = 'utf-8' | 'utf-16-le' | 'utf-16-be' | 'windows-1252';

export type DecodeRefusal =
  | { readonly code: 'no-text' }
  | { readonly code: 'too-large'; readonly limit: number; readonly bytes: number }
  /** A workbook (zipped or of the older kind), a printed document, or some other file that is no text. */
  | { readonly code: 'workbook' | 'document' | 'picture' | 'not-text' };
