import type { HazardKind } from '../model/fixture-type.ts';
import type { TypeTrouble } from './type-troubles.ts';

/** What of a `.gdtf` file was read, what was wrong with it, what was guessed, and what was left. */
export interface GdtfReport {
  /** The version the file names, as it stands; empty when it names none. */
  readonly version: string;
  readonly read: { readonly modes: number; readonly channels: number; readonly parts: number };
  readonly defects: readonly Defect[];
  /** Defects beyond those listed. */
  readonly moreDefects: number;
  readonly guesses: readonly Guess[];
  readonly left: readonly LeftOut[];
  /** What is wrong with the type itself, however well its file was made. */
  readonly troubles: readonly TypeTrouble[];
}

export const DEFECT_CODES = [
  'not-at-root',
  'encoding',
  'version',
  'no-name',
  'guid',
  'part-unnamed',
  'part-named-twice',
  'part-within',
  'mode-named-twice',
  'mode-root',
  'copy-of-nothing',
  'channel-part',
  'channel-empty',
  'offset',
  'break',
  'value',
  'value-too-high',
  'number',
  'link',
  'notes-file',
] as const;

/** Something the file has no right to, which was read around. `what` is the text in question; `line` is of the description. */
export interface Defect {
  readonly code: (typeof DEFECT_CODES)[number];
  readonly line: number;
  readonly what: string;
}

/** Something the file does not say, and what was taken for it: for a person to confirm. */
export type Guess =
  /** The file names no model; it was called after the file that was sent. */
  | { readonly kind: 'named-by-file'; readonly name: string }
  | { readonly kind: 'laser' }
  | { readonly kind: 'hazard'; readonly hazard: HazardKind; readonly from: string }
  /** A figure of 0, taken as not stated. */
  | { readonly kind: 'not-stated'; readonly figure: 'weight' | 'power' }
  | { readonly kind: 'power'; readonly from: 'consumers' | 'largest'; readonly watts: number }
  /** Slots as versions before 1.1 spell them. */
  | { readonly kind: 'old-offsets'; readonly channels: number }
  | { readonly kind: 'old-defaults'; readonly channels: number };

export const LEFT_PARTS = [
  'wheels',
  'emitters',
  'filters',
  'models',
  'relations',
  'macros',
  'revisions',
  'presets',
  'protocols',
  'wiring',
  'files',
] as const;

/** Something the file has that a fixture type here has no place for. */
export interface LeftOut {
  readonly what: (typeof LEFT_PARTS)[number];
  readonly count: number;
}
