/**
 * The cells of a fixture's row, in the order in which a stored row keeps them. New fields go at the end: the order is part
 * of the document format. `address` is the start address of break 1, `address2` to `address4` those of breaks 2 to 4; `run` is the
 * data line it is on, `along` its place there, `cable` the metres from what is before it; whatever stands in `lock` keeps its addresses.
 */
export const FIELDS = [
  'channel',
  'position',
  'unit',
  'type',
  'mode',
  'address',
  'address2',
  'address3',
  'address4',
  'purpose',
  'colour',
  'circuit',
  'notes',
  'order',
  'firmware',
  'run',
  'along',
  'cable',
  'lock',
] as const;

export type Field = (typeof FIELDS)[number];

/** A cell as stored: text, a number, or null for empty. What a field makes of it is `readCell`'s business. */
export type CellValue = string | number | null;

/** The address fields in break order: break 1 first. */
export const ADDRESS_FIELDS = ['address', 'address2', 'address3', 'address4'] as const satisfies readonly Field[];

export type AddressField = (typeof ADDRESS_FIELDS)[number];

/** The fields a person reads and writes in the sheet; `order` and `along` only keep units where they were put. */
export type PersonField = Exclude<Field, 'order' | 'along'>;

export const PERSON_FIELDS = FIELDS.filter((field): field is PersonField => field !== 'order' && field !== 'along');

/** The longest text a cell holds, in UTF-16 units; longer input is refused, never cut. */
export const CELL_LIMIT = 2000;
