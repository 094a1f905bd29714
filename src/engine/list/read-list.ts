import type { CardEdit } from '../model/card.ts';
import type { Cells } from '../model/fixture.ts';
import type { Meaning } from './meaning.ts';

/** A list read line by line: what a preview shows and an import carries out. Every row of the grid is one line here. */
export interface FixtureList {
  readonly lines: readonly ListLine[];
  /** In the order in which the list names them. */
  readonly positions: readonly ListPosition[];
  readonly modes: readonly ListMode[];
  readonly universes: readonly { readonly universe: number; readonly label: string }[];
  readonly notes: readonly { readonly text: string; readonly order: number }[];
  readonly wanted: readonly { readonly type: string; readonly version: string }[];
  readonly cards: readonly CardEdit[];
  /** One entry per column: its cells below the heading row that hold something, and how many of them were taken in. */
  readonly columns: readonly ColumnAccount[];
  /** Fixtures that all lines together make. */
  readonly fixtures: number;
}

export interface ListPosition {
  readonly name: string;
  /** Where our own sheet had it; null in any other list. */
  readonly order: number | null;
}

export interface ListMode {
  readonly type: string;
  readonly mode: string;
  readonly footprints: readonly number[];
}

export interface ColumnAccount {
  readonly heading: string;
  readonly meaning: Meaning;
  readonly filled: number;
  readonly taken: number;
}

interface LineBase {
  /** 1-based line of the source. */
  readonly line: number;
  /** Everything the line says, cells joined by ` | `: for lines that become no fixture. */
  readonly text: string;
  readonly remarks: readonly ListRemark[];
}

export type ListLine =
  | (LineBase & { readonly kind: 'fixtures'; readonly fixtures: readonly Cells[] })
  | (LineBase & { readonly kind: 'position'; readonly position: string })
  | (LineBase & { readonly kind: 'universe'; readonly universe: number })
  | (LineBase & { readonly kind: 'title' | 'heading' | 'blank' | 'total' | 'foot' | 'record' })
  | (LineBase & { readonly kind: 'unread'; readonly reason: UnreadReason });

export type LineKind = ListLine['kind'];

/** Why a line became nothing. */
export type UnreadReason =
  /** None of its cells is in a column that makes a fixture. */
  | 'no-fixture'
  /** The line stands for more units than a list may. */
  | 'too-many-units'
  /** A record at the foot of our own sheet that does not say what it should. */
  | 'bad-record';

/** Something about a line that the person should see. `column` is 0-based, null when it is about the whole line. */
export interface ListRemark {
  readonly code: RemarkCode;
  readonly column: number | null;
  readonly text: string;
}

export type RemarkCode =
  /** The cell could not be read as its column's meaning; it stays in the fixture as typed. */
  | 'unreadable'
  /** The cell could not be read or has no cell of its own in a fixture: it is kept in the notes. */
  | 'kept-in-notes'
  /** The cell is not taken in: the line, or the fixture, has no place for it. */
  | 'not-taken'
  /** Longer than a cell may be: not taken in. */
  | 'too-long'
  /** One line became several fixtures; `text` is how many. */
  | 'expanded'
  /** The numbers a line counts up and its quantity disagree: the units, else the channels, count. */
  | 'quantity-differs'
  /** Units after the first have no number, since this one cannot be counted on. */
  | 'unit-not-counted'
  /** All units of the line share its channel. */
  | 'channel-shared'
  /** All units of the line share its address, since the list goes on right behind it. */
  | 'address-shared'
  /** Only the first unit has an address: without a footprint the next cannot be told. */
  | 'address-not-counted'
  /** A unit that does not fit behind the others starts the next universe; `text` is its address. */
  | 'next-universe'
  /** A range of slots that is not as long as the units of the line: its first slot counts. */
  | 'range-differs'
  /** A footprint that differs from the same type and mode elsewhere: a mode of its own was made. */
  | 'mode-split'
  /** Written `3.12` among addresses of three digits: slot 120. */
  | 'zero-restored'
  /** The universe column and the address disagree: the address counts. */
  | 'universe-differs'
  /** A slot without a universe: it stays in the fixture as typed. */
  | 'no-universe'
  /** The footprint was read from the words of the mode or type. */
  | 'footprint-from-words';
