import type { Meaning } from '../list/meaning.ts';

/** The columns of a patch sheet in the order in which it has them; breaks 2 to 4 and what follows the notes only when a fixture has them. */
export const PATCH_COLUMNS = [
  'position',
  'unit',
  'channel',
  'type',
  'mode',
  'footprint',
  'universe',
  'slot',
  'universe2',
  'slot2',
  'universe3',
  'slot3',
  'universe4',
  'slot4',
  'purpose',
  'colour',
  'circuit',
  'notes',
  'firmware',
  'run',
  'along',
  'cable',
  'lock',
  'order',
] as const satisfies readonly Meaning[];

export type PatchColumn = (typeof PATCH_COLUMNS)[number];

/**
 * The headings of a patch sheet. They are part of its format, as field names are: the importer knows a sheet of ours by
 * them and reads its cells exactly as they stand. An address stands in two columns, because spreadsheets take `2:10` for
 * a time and `2.100` for a number.
 */
export const PATCH_HEADINGS: Readonly<Record<PatchColumn, string>> = {
  position: 'Position',
  unit: 'Unit',
  channel: 'Channel',
  type: 'Type',
  mode: 'Mode',
  footprint: 'Slots',
  universe: 'Universe',
  slot: 'Slot',
  universe2: 'Universe 2',
  slot2: 'Slot 2',
  universe3: 'Universe 3',
  slot3: 'Slot 3',
  universe4: 'Universe 4',
  slot4: 'Slot 4',
  purpose: 'Purpose',
  colour: 'Colour',
  circuit: 'Circuit',
  notes: 'Notes',
  firmware: 'Firmware',
  run: 'Run',
  along: 'Place on run',
  cable: 'Cable m',
  lock: 'Locked',
  order: 'Row order',
};

/** The line under the last row of a sheet: everything behind it is foot, not fixtures. */
export const END_MARK = 'End of list';

/** First cells of the records at the foot: the parts of a rig that are no fixtures, and the findings that stood. */
export const RECORD_MARKS = {
  mode: 'Mode',
  position: 'Position',
  universe: 'Universe',
  note: 'Note',
  wanted: 'Firmware wanted',
  signature: 'Answers for',
  card: 'Card',
  caution: 'Caution',
  finding: 'Finding',
} as const;

/** Footprints as a sheet prints them: `16`, or `16+4` for two breaks. */
export function formatFootprints(footprints: readonly number[]): string {
  return footprints.join('+');
}
