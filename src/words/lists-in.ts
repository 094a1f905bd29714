import type { DecodeRefusal, Delimiter, GridCaution, GridRefusal, TextEncoding } from '#engine/list/grid.ts';
import type { Reason } from '#engine/list/layout.ts';
import type { Meaning } from '#engine/list/meaning.ts';
import type { LineKind, RemarkCode, UnreadReason } from '#engine/list/read-list.ts';
import { counted } from './screens.ts';

export const LISTS_IN_WORDS = {
  title: 'Lists in',
  about:
    'Bring in a fixture list from a spreadsheet: a CSV or text file in any usual form, or cells copied from it. You see what every line becomes before anything is written.',
  choose: 'Choose a file',
  drop: 'or drop it here',
  paste: 'Or paste the list',
  pasteHint: 'Copy the cells in the spreadsheet, headings too, and paste them here.',
  readPasted: 'Read what I pasted',
  pasted: 'pasted text',
  another: 'Take another list',
  reading: 'Reading the list…',
  unreadableFile: {
    what: 'The file cannot be read.',
    next: 'Check that it is a file, and still there, then choose it again.',
  },
  readOnly: {
    what: 'You may look at this rig, not edit it.',
    next: 'Ask a lead of the crew to make you an editor.',
  },
  notReady: 'The rig is still on its way to this device. You can look through the list meanwhile.',
  columns: 'Columns',
  columnsAbout:
    'What each column was taken to mean. Change what is wrong; the crew’s next list with these headings starts from it.',
  column: 'Column',
  heading: 'Heading',
  examples: 'First cells',
  meaning: 'Taken as',
  meaningOf: (column: string) => `Column ${column} is taken as`,
  because: 'Because',
  taken: 'Cells taken in',
  takenOf: (taken: number, filled: number) => (filled === 0 ? 'empty' : `${taken} of ${filled}`),
  noHeading: 'no heading',
  headingRow: 'Headings stand in',
  noHeadingRow: 'no line: there are no headings',
  lineText: (line: number, text: string) => `line ${line}: ${text}`,
  blankPosition: 'Where a line has no position',
  blankPositions: { blank: 'it has none', 'as-above': 'it hangs where the line above does' },
  lines: 'Lines',
  linesAbout: 'Every line of the list and what it becomes.',
  show: 'Show',
  shows: {
    all: (count: number) => `all lines (${count})`,
    check: (count: number) => `lines to check (${count})`,
    unread: (count: number) => `lines not read (${count})`,
  },
  take: 'Bring in',
  takeLine: (line: number) => `Bring in line ${line}`,
  line: 'Line',
  becomes: 'Becomes',
  nothingHere: 'No such lines.',
  leftOut: 'Left out.',
  counts: (taken: {
    readonly positions: number;
    readonly types: number;
    readonly unread: number;
    readonly leftOut: number;
    readonly toCheck: number;
    readonly columnsOut: number;
  }) =>
    [
      counted(taken.positions, 'position'),
      counted(taken.types, 'type'),
      ...(taken.unread === 0 && taken.toCheck === 0 ? ['every line read'] : []),
      ...(taken.unread === 0 ? [] : [`${counted(taken.unread, 'line')} not read`]),
      ...(taken.toCheck === 0 ? [] : [`${counted(taken.toCheck, 'line')} to check`]),
      ...(taken.columnsOut === 0 ? [] : [`${counted(taken.columnsOut, 'column')} left out, see below`]),
      ...(taken.leftOut === 0 ? [] : [`${counted(taken.leftOut, 'line')} left out`]),
    ].join(' · '),
  alreadyThere: (count: number) =>
    `The rig has ${counted(count, 'fixture')} already. These come in beside them; nothing of the rig is replaced.`,
  leaveOutKnown: (lines: number) => `Leave out ${counted(lines, 'line')} whose position, unit and channel the rig has`,
  bringIn: (fixtures: number) => `Bring in ${counted(fixtures, 'fixture')}`,
  undoAbout: 'One edit: undo on the sheet takes the whole list back.',
  nothingToBringIn: 'There is no fixture to bring in. Check which line holds the headings and what the columns mean.',
  notBroughtIn: {
    what: 'Nothing was brought in.',
    next: 'Check that the rig is open for editing, then try again.',
  },
} as const;

export const FIXTURE_HEADINGS = {
  channel: 'Ch',
  position: 'Position',
  unit: 'Unit',
  type: 'Type',
  mode: 'Mode',
  address: 'Address',
  rest: 'Purpose, colour, circuit, notes',
} as const;

export const MEANING_WORDS: Readonly<Record<Meaning, string>> = {
  channel: 'channel',
  position: 'position',
  unit: 'unit',
  type: 'fixture type',
  mode: 'mode',
  address: 'start address',
  address2: 'start address, break 2',
  address3: 'start address, break 3',
  address4: 'start address, break 4',
  purpose: 'purpose',
  colour: 'colour',
  circuit: 'circuit',
  notes: 'notes',
  firmware: 'firmware',
  run: 'run (data line)',
  cable: 'metres of cable',
  lock: 'lock on its address',
  universe: 'universe',
  slot: 'slot',
  universe2: 'universe, break 2',
  slot2: 'slot, break 2',
  universe3: 'universe, break 3',
  slot3: 'slot, break 3',
  universe4: 'universe, break 4',
  slot4: 'slot, break 4',
  absolute: 'absolute address',
  footprint: 'footprint (slots)',
  quantity: 'quantity',
  order: 'order of rows',
  along: 'order on the run',
  'keep-in-notes': 'kept in the notes',
  ignore: 'nothing: left out',
};

export const REASON_WORDS: Readonly<Record<Reason, string>> = {
  heading: 'of its heading',
  content: 'of what stands in it',
  remembered: 'your crew said so before',
  person: 'you said so',
  nothing: 'nothing speaks for more',
};

const ENCODING_WORDS: Readonly<Record<TextEncoding, string>> = {
  'utf-8': 'UTF-8',
  'utf-16-le': 'UTF-16, little-endian',
  'utf-16-be': 'UTF-16, big-endian',
  'windows-1252': 'Windows-1252',
};

const DELIMITER_WORDS: Readonly<Record<Delimiter, string>> = {
  ',': 'commas',
  ';': 'semicolons',
  '\t': 'tabs',
  '|': 'bars',
};

/** `list.csv · UTF-8 · separated by commas · 104 lines`. */
export function sayHowRead(name: string, encoding: TextEncoding | null, delimiter: Delimiter, lines: number): string {
  const parts = [name, ...(encoding === null ? [] : [ENCODING_WORDS[encoding]])];
  return [...parts, `separated by ${DELIMITER_WORDS[delimiter]}`, counted(lines, 'line')].join(' · ');
}

export const TEXT_CAUTIONS = {
  'cut-off': 'The file ends in the middle of a character: it may have been cut off. Check its last lines.',
  replaced: 'Some bytes of the file are no text; they stand as �. Check the lines that hold one.',
} as const;

/** What an oddly placed quote means for the list. */
export function sayGridCaution({ code, line }: GridCaution): string {
  return code === 'quote-not-closed'
    ? `Line ${line}: a quote is opened and never closed; it is read as it stands.`
    : `Line ${line}: a quote stands where none belongs; it is read as it stands.`;
}

/** Why a file could not be read as a list at all. */
export function sayListRefusal(refusal: DecodeRefusal | GridRefusal): { readonly what: string; readonly next: string } {
  switch (refusal.code) {
    case 'no-text':
      return { what: 'There is no text in it.', next: 'Choose another file, or copy the cells and paste them.' };
    case 'too-large':
      return {
        what: `The file has ${megabytes(refusal.bytes)}; a list may have ${megabytes(refusal.limit)}.`,
        next: 'Save only the sheet with the fixtures, as CSV.',
      };
    case 'workbook':
      return {
        what: 'This is a spreadsheet’s workbook, not a text file.',
        next: 'In the spreadsheet, save the sheet as CSV, or copy its cells and paste them here.',
      };
    case 'document':
      return {
        what: 'This is a printed document, not a text file.',
        next: 'Ask for the list as CSV, or copy its lines and paste them here.',
      };
    case 'picture':
      return { what: 'This is a picture, not a text file.', next: 'Ask for the list as CSV.' };
    case 'not-text':
      return { what: 'This is not a text file.', next: 'Save the list as CSV, or copy its cells and paste them here.' };
    case 'too-many-lines':
      return {
        what: `The list has more than ${refusal.limit.toLocaleString('en-GB')} lines.`,
        next: 'Split it and bring in the parts one after the other.',
      };
    case 'too-many-columns':
      return {
        what: `Line ${refusal.line} has more than ${refusal.limit} columns.`,
        next: 'Check that line, or save only the columns that matter.',
      };
  }
}

const megabytes = (bytes: number) => `${(bytes / 1_000_000).toFixed(1)} MB`;

export const LINE_WORDS: Readonly<Record<Exclude<LineKind, 'fixtures' | 'unread'>, string>> = {
  position: 'Position for the lines below',
  universe: 'Universe for the lines below',
  title: 'Title',
  heading: 'Headings',
  blank: 'Blank',
  total: 'Total: not taken in',
  foot: 'Foot of the sheet: not taken in',
  record: 'Record of our own sheet',
};

export const UNREAD_WORDS: Readonly<Record<UnreadReason, string>> = {
  'no-fixture': 'Not read: nothing in it makes a fixture.',
  'too-many-units': 'Not read: it stands for more units than one line may.',
  'bad-record': 'Not read: a record of our own sheet that does not say what it should.',
};

/** What a remark says, with the text it is about. */
export const REMARK_WORDS: Readonly<Record<RemarkCode, (text: string) => string>> = {
  unreadable: (text) => `“${text}” cannot be read as this column’s meaning; it stays in the cell as typed.`,
  'kept-in-notes': (text) => `“${text}” has no cell of its own; it is kept in the notes.`,
  'not-taken': (text) => `“${text}” is not taken in: there is no place for it.`,
  'too-long': (text) => `“${text.slice(0, 40)}…” is longer than a cell may be and is not taken in.`,
  expanded: (text) => `One line, ${text} units.`,
  'quantity-differs': (text) => `The quantity (${text}) and the numbers counted up disagree; the numbers count.`,
  'unit-not-counted': (text) => `Only the first unit has a number: nothing can be counted on from “${text}”.`,
  'channel-shared': (text) => `All units of the line share channel ${text}.`,
  'address-shared': (text) => `All units of the line share ${text}: the list goes on right behind it.`,
  'address-not-counted': (text) =>
    `Only the first unit has an address (${text}): without a footprint the next cannot be told.`,
  'next-universe': (text) => `A unit does not fit behind the others and starts the next universe, at ${text}.`,
  'range-differs': (text) => `The range ${text} is not as long as the units of the line; its first slot counts.`,
  'mode-split': (text) =>
    `Another footprint than this mode has elsewhere in the list: it became a mode of its own, ${text}.`,
  'zero-restored': (text) => `“${text}” lost its last zero to a spreadsheet; it was put back.`,
  'universe-differs': (text) => `The universe column says ${text}; the address counts.`,
  'no-universe': (text) => `Slot ${text} has no universe; it stays in the cell as typed.`,
  'footprint-from-words': (text) => `The footprint (${text}) was read from the words.`,
};
