import type { TypeTrouble } from '../type/type-troubles.ts';
import type { FactField, RepeatField, RowField } from './draft.ts';

type FactPlace = { readonly of: 'facts'; readonly field: FactField };
type ModePlace = { readonly of: 'mode'; readonly mode: string };
type RowPlace = { readonly of: 'row'; readonly mode: string; readonly row: string; readonly field: RowField };
type RepeatPlace = {
  readonly of: 'repeat';
  readonly mode: string;
  readonly repeat: string;
  readonly field: RepeatField;
};

/** Where in a draft something is wrong; modes, rows and repeats by their ids. */
export type DraftPlace = { readonly of: 'type' } | FactPlace | ModePlace | RowPlace | RepeatPlace;

/** What is wrong with a draft, as data; `words/` says it. What cannot be read is left out of the type. */
export type DraftTrouble =
  /** No mode at all, or none that takes a slot. */
  | { readonly where: { readonly of: 'type' }; readonly kind: 'no-mode' | 'no-usable-mode' }
  /** No maker or no model. */
  | { readonly where: FactPlace; readonly kind: 'missing' }
  /** `text` is what cannot be read: the cell, or a line of it. */
  | { readonly where: FactPlace; readonly kind: 'unreadable-fact'; readonly text: string }
  /** `mode-kept-missing`: the base revision has no such mode, or there is none. */
  | {
      readonly where: ModePlace;
      readonly kind: 'mode-unnamed' | 'mode-named-twice' | 'mode-without-slots' | 'mode-kept-missing';
    }
  | { readonly where: ModePlace; readonly kind: 'only-virtual'; readonly channels: number }
  /** A mode kept from the base revision has this trouble since it was made. */
  | { readonly where: ModePlace; readonly kind: 'kept-trouble'; readonly trouble: TypeTrouble }
  /** `unreadable-break` leaves the row out, `unreadable-slots` too. */
  | {
      readonly where: RowPlace;
      readonly kind: 'unreadable-slots' | 'unreadable-break' | 'unreadable-value';
      readonly text: string;
    }
  | { readonly where: RowPlace; readonly kind: 'value-too-high'; readonly text: string; readonly highest: number }
  /** `line` counts from 1. `range-too-high`: it goes beyond 255. */
  | {
      readonly where: RowPlace;
      readonly kind: 'unreadable-range' | 'range-too-high';
      readonly line: number;
      readonly text: string;
    }
  /** Values, in 8 bit steps, that two lines name, or none. */
  | {
      readonly where: RowPlace;
      readonly kind: 'ranges-overlap' | 'ranges-gap';
      readonly from: number;
      readonly to: number;
    }
  /** Neither an attribute nor a name; or the repeat it belongs to is not there. */
  | { readonly where: RowPlace; readonly kind: 'nothing-said' | 'repeat-gone' }
  /** The last slot it takes, with all its cells. */
  | { readonly where: RowPlace; readonly kind: 'past-512'; readonly break: number; readonly last: number }
  /** The first run of slots that the same rows take; a row alone takes it twice itself, or its cells lie over each other. */
  | {
      readonly where: RowPlace;
      readonly kind: 'slot-taken-twice';
      readonly break: number;
      readonly first: number;
      readonly last: number;
      readonly rows: readonly string[];
    }
  /** Rows of one part with one attribute: nobody can tell them apart. */
  | { readonly where: RowPlace; readonly kind: 'rows-alike'; readonly rows: readonly string[] }
  /** `too-many-cells`: the cells of a mode's repeats are more than fit its breaks. */
  | {
      readonly where: RepeatPlace;
      readonly kind: 'unreadable-count' | 'unreadable-step' | 'too-many-cells';
      readonly text: string;
    }
  | { readonly where: RepeatPlace; readonly kind: 'repeat-without-rows' };

const WARNINGS: ReadonlySet<DraftTrouble['kind']> = new Set([
  'kept-trouble',
  'ranges-overlap',
  'ranges-gap',
  'nothing-said',
  'repeat-gone',
  'rows-alike',
  'repeat-without-rows',
] as const);

/** Whether a draft with this trouble is not published: the type would be unusable, or lack what somebody wrote. */
export const stopsPublishing = (trouble: DraftTrouble): boolean => !WARNINGS.has(trouble.kind);
