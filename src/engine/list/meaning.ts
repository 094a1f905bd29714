import { PERSON_FIELDS } from '../model/field.ts';

/**
 * What a column of somebody's list stands for. A fixture's fields by their own names, and:
 * - `ignore`: not taken in, and said so; `keep-in-notes`: kept word for word in the notes, with its heading;
 * - `universe`, `slot`: an address in two columns (`universe2`, `slot2` … for breaks 2 to 4);
 * - `absolute`: a number counted through all universes, where `address` is any notation;
 * - `footprint`: slots the mode occupies; `quantity`: how many units the line stands for;
 * - `order`, `along`: where the row stood, in the sheet and on its run; they count in a patch sheet of our own only.
 */
export const MEANINGS = [
  ...PERSON_FIELDS,
  'universe',
  'slot',
  'universe2',
  'slot2',
  'universe3',
  'slot3',
  'universe4',
  'slot4',
  'absolute',
  'footprint',
  'quantity',
  'order',
  'along',
  'keep-in-notes',
  'ignore',
] as const;

export type Meaning = (typeof MEANINGS)[number];

/** Meanings that several columns may share: their texts are joined in column order (`Make` and `Model` are one type). */
export const SHARED_MEANINGS: ReadonlySet<Meaning> = new Set<Meaning>([
  'ignore',
  'keep-in-notes',
  'position',
  'type',
  'mode',
  'purpose',
  'colour',
  'circuit',
  'notes',
]);
