import type { LeftOutReason } from '#engine/draft/chart-reading.ts';
import type { Stretch } from './read-value.ts';

/** A chart under one heading, before its rows are told apart by mode. */
export interface Block {
  name: string;
  /** Slots that its heading says it has. */
  readonly footprint: number | null;
  /** Names of its columns of slots. */
  readonly modes: readonly string[];
  readonly rows: RawRow[];
  /** The highest slot so far, those of lines left out too. */
  highest: number;
}

export interface RawRow {
  /** Of each column of slots; empty where the mode has not got it. */
  readonly slots: readonly (readonly number[])[];
  name: string;
  /** An attribute in a column of its own. */
  readonly attribute: string;
  readonly break: string;
  readonly default: string;
  readonly highlight: string;
  readonly values: RawValue[];
  /** Words that stood with no value. */
  readonly notes: string[];
  /** Text in the column of values that is none. */
  readonly unread: string[];
  readonly lines: number[];
}

export interface RawValue extends Stretch {
  text: string;
}

/** What became of a line, with the row itself: which number it gets shows at the end. */
export type Fate =
  | { readonly kind: 'blank' | 'heading' }
  | { readonly kind: 'row' | 'range' | 'continuation'; readonly row: RawRow }
  | { readonly kind: 'left-out'; readonly reason: LeftOutReason };

/** What one line says, however it is laid out. */
export interface Fields {
  readonly slots: readonly (readonly number[])[];
  /** A word such as `Ch` stood before the slots. */
  readonly worded: boolean;
  readonly mark: string;
  readonly name: string;
  readonly attribute: string;
  readonly stretch: Stretch | null;
  readonly text: string;
  readonly unread: string;
  readonly break: string;
  readonly default: string;
  readonly highlight: string;
}

export const NO_FIELDS: Fields = {
  slots: [],
  worded: false,
  mark: '',
  name: '',
  attribute: '',
  stretch: null,
  text: '',
  unread: '',
  break: '',
  default: '',
  highlight: '',
};
