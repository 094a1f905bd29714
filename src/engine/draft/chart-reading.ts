/**
 * What a slot chart pasted from a manual was read as: its modes, and what became of each of its lines. The texts are those
 * that a `DraftRow` holds.
 */
export interface ChartReading {
  /** In the order of the chart; one without a name when the chart names none. */
  readonly modes: readonly ChartMode[];
  /** Every line of the text, each once, in order. */
  readonly lines: readonly ChartLine[];
}

export interface ChartMode {
  readonly name: string;
  readonly rows: readonly ChartRow[];
  /** Rows that come again and again; offered, never collapsed. */
  readonly repeats: readonly ChartRepeat[];
  readonly remarks: readonly ChartRemark[];
}

/** How sure the attribute is: the chart names it, its words say so, they nearly do, or nobody knows. */
export type AttributeGuess = 'stated' | 'sure' | 'likely' | 'unknown';

export interface ChartRow {
  readonly slots: string;
  readonly break: string;
  readonly name: string;
  readonly attribute: string;
  readonly part: string;
  readonly guess: AttributeGuess;
  readonly default: string;
  readonly highlight: string;
  readonly ranges: string;
  /** Lines of the text it was read from, 1-based, ascending. */
  readonly lines: readonly number[];
}

/** `count` times `rows` rows from `firstRow` (an index) on, each time the same attributes `step` slots further. */
export interface ChartRepeat {
  readonly firstRow: number;
  readonly rows: number;
  readonly count: number;
  readonly step: number;
}

/** Something to check in what was read. `row` is an index, null where it concerns the mode; `text` is what it is about. */
export interface ChartRemark {
  readonly code: RemarkCode;
  readonly row: number | null;
  readonly text: string;
}

export const REMARK_CODES = [
  'footprint-differs',
  'counted-from-0',
  'slot-twice',
  'slots-not-named',
  'from-percent',
  'from-16-bit',
  'value-unread',
  'default-unread',
  'note-not-taken',
  'fine-values',
  'fine-alone',
  'many-bytes',
  'taken-apart',
] as const;
export type RemarkCode = (typeof REMARK_CODES)[number];

/** A row of a mode, both by index. */
export interface RowRef {
  readonly mode: number;
  readonly row: number;
}

export interface ChartLine {
  /** 1-based. */
  readonly line: number;
  readonly text: string;
  readonly became: LineBecame;
}

export type LineBecame =
  | { readonly kind: 'blank' }
  /** A heading of columns, of a group of rows, or of a mode. */
  | { readonly kind: 'heading' }
  | { readonly kind: 'row' | 'range' | 'continuation'; readonly of: readonly RowRef[] }
  | { readonly kind: 'left-out'; readonly reason: LeftOutReason };

export const LEFT_OUT_REASONS = [
  'page',
  'decoration',
  'elsewhere',
  'too-many-slots',
  'too-many-values',
  'chart-full',
  'past-512',
  'too-long',
  'no-row',
  'in-no-mode',
  'text',
] as const;
export type LeftOutReason = (typeof LEFT_OUT_REASONS)[number];

/** Why a text is no chart at all. */
export type ChartRefusal =
  | { readonly code: 'no-text' }
  | { readonly code: 'too-large'; readonly limit: number; readonly characters: number }
  | { readonly code: 'too-many-lines'; readonly limit: number };
