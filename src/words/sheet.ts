import { formatCell } from '#engine/model/cell-text.ts';
import type { PlanName } from '#engine/model/edit.ts';
import type { CellValue, Field, PersonField } from '#engine/model/field.ts';
import { PLAN_NAMES } from './plans.ts';

/** What heads each column, and what a screen reader and a list of columns call it. */
export const COLUMN_WORDS: Readonly<
  Record<PersonField | 'footprint', { readonly head: string; readonly name: string }>
> = {
  channel: { head: 'Ch', name: 'Channel' },
  position: { head: 'Position', name: 'Position' },
  unit: { head: 'Unit', name: 'Unit' },
  type: { head: 'Type', name: 'Type' },
  mode: { head: 'Mode', name: 'Mode' },
  address: { head: 'Address', name: 'Address' },
  address2: { head: 'Address 2', name: 'Address of break 2' },
  address3: { head: 'Address 3', name: 'Address of break 3' },
  address4: { head: 'Address 4', name: 'Address of break 4' },
  footprint: { head: 'Fp', name: 'Footprint' },
  purpose: { head: 'Purpose', name: 'Purpose' },
  colour: { head: 'Colour', name: 'Colour' },
  circuit: { head: 'Circuit', name: 'Circuit' },
  notes: { head: 'Notes', name: 'Notes' },
  firmware: { head: 'Firmware', name: 'Firmware' },
  run: { head: 'Run', name: 'Run' },
  cable: { head: 'Cable m', name: 'Metres of cable' },
  lock: { head: 'Locked', name: 'Locked' },
};

const count = (n: number, one: string, many = `${one}s`): string => `${n.toLocaleString('en')} ${n === 1 ? one : many}`;

export const GROUPING_WORDS = {
  label: 'Group by',
  position: 'position',
  universe: 'universe',
  none: 'nothing',
} as const;

export const SHEET_WORDS = {
  /** Name of the grid for a screen reader. */
  grid: 'Patch sheet',
  margin: 'Margin',
  noPosition: 'No position',
  notPatched: 'Not patched',
  universe: (n: number) => `Universe ${n}`,
  groupSum: (units: number, slots: number) => `${count(units, 'unit')} · ${count(slots, 'slot')}`,
  more: (n: number) => `${n} more`,
  here: (name: string) => `${name} is in this cell`,
  suggestions: 'Suggestions',
  readOnly: 'You are a reader here: look at everything, change nothing. A lead of the crew can make you an editor.',
  find: 'Find a unit, channel or address',
  found: (at: number, of: number) => (of === 0 ? 'nothing found' : `${at} of ${of}`),
  tally: 'Findings',
  tools: 'Tools of the sheet',
  addRow: 'Add a row',
  undo: 'Undo',
  redo: 'Redo',
  filter: 'Filter',
  filterOn: 'Filter on',
  plans: 'Plans',
  columns: 'Columns',
  keys: 'Keys',
  findings: 'Findings',
  slots: 'Slots',
  types: 'Types',
  firmware: 'Firmware',
  hazards: 'Hazards',
  positions: 'Positions',
  loads: 'Loads',
  upkeep: 'Upkeep',
  notes: 'Notes',
  close: 'Close',
  apply: 'Apply',
  leave: 'Leave it',
} as const;

export const FILTER_WORDS = {
  title: 'Filter',
  label: 'Show rows that hold',
  column: 'In',
  any: 'any column',
  flagged: 'Only rows with findings',
  clear: 'Show every row',
  shown: (rows: number, all: number) => `${count(rows, 'row')} of ${all.toLocaleString('en')}`,
} as const;

export const COLUMNS_WORDS = {
  title: 'Columns',
  about:
    'Kept on this device, for you alone. In the heads of the sheet: arrows go from head to head, Ctrl and an arrow moves a column, Shift and an arrow sizes it.',
  up: (name: string) => `Move ${name} to the left`,
  down: (name: string) => `Move ${name} to the right`,
  narrower: (name: string) => `Make ${name} narrower`,
  wider: (name: string) => `Make ${name} wider`,
  reset: 'As they were at first',
} as const;

export const EMPTY_WORDS = {
  title: 'This sheet is empty.',
  filtered: 'No row passes the filter.',
  start: 'Begin in one of three ways:',
  type: 'Type the first row',
  paste:
    'Paste rows here, copied from a spreadsheet. Their columns are read as they stand in this sheet: channel, position, unit, type, mode, address, …',
  pasteName: 'Paste rows here',
  list: 'Take a whole list in from a file:',
  reader: 'Nothing has been written here yet. An editor of the crew has to begin.',
  arriving: 'The rig is on its way…',
} as const;

export const RIBBON_WORDS = {
  name: 'Ribbon of the universe',
  universe: 'Universe',
  free: (slots: number) => `${slots} free`,
  /** What a block says to a screen reader. */
  block: (unit: string, first: number, last: number, lock: string) =>
    `${unit}, slots ${first} to ${last}${lock === '' ? '' : `, locked: ${lock}`}`,
  asks: (unit: string, first: string, last: number | null) =>
    last === null ? `${unit} is at ${first}.` : `${unit} asks for ${first}–${last}.`,
  notPatched: (unit: string) => `${unit} has no address.`,
  modeUnknown: (unit: string) => `How many slots ${unit} takes is not known: set its type and mode.`,
  room: (slots: number) => `Free room of ${count(slots, 'slot')}:`,
  locked: 'It is locked: no other place is offered.',
  noRoom: (slots: number) => `No free room of ${count(slots, 'slot')} in a row.`,
  take: (unit: string, address: string) => `Place ${unit} at ${address}`,
  nothing: 'Select a unit to see its universe.',
} as const;

export const PREVIEW_WORDS = {
  title: (plan: PlanName) => PLAN_NAMES[plan],
  changes: (n: number) => `It changes ${count(n, 'cell')}:`,
  added: (n: number) => `It adds ${count(n, 'row')}.`,
  removed: (n: number) => `It removes ${count(n, 'row')}.`,
  nothing: 'It changes nothing any more.',
  cleared: (n: number) => `Clears ${count(n, 'finding')}`,
  raised: (n: number) => `Raises ${count(n, 'finding')}`,
  same: 'Findings stay as they are.',
  unit: 'Unit',
  cell: 'Cell',
  from: 'From',
  to: 'To',
  cost: 'Cost',
  more: (n: number) => `and ${n} more`,
} as const;

export const FINDINGS_WORDS = {
  title: 'Findings',
  none: 'The checks find nothing. That is no promise that the rig is right: they see the record, not the units.',
  go: (unit: string) => `Go to ${unit}`,
  first: (n: number) => `The first ${n} of them; clear some to see the rest.`,
  hidden: 'Its row is hidden by the filter.',
} as const;

export const LOST_WORDS = {
  /** `Tomas set LX 1 · 5 address to 2:101 at the same time. Yours was 2:133.` */
  told: (who: string | undefined, cell: string, theirs: string, mine: string) =>
    `${who ?? 'Somebody'} set ${cell} to ${theirs} at the same time. Yours was ${mine}.`,
  /** `Somebody removed LX 1 · 5 while you changed its address and purpose.` */
  removed: (unit: string, cells: readonly string[]) =>
    `Somebody removed ${unit} while you changed its ${cells.join(', ')}.`,
  putUnitBack: 'Put the unit back',
  leaveUnit: 'Leave it out',
  putBack: 'Put mine back',
  dismiss: 'Leave theirs',
  empty: 'nothing',
} as const;

export const cellName = (unit: string, field: Field): string => `${unit} ${fieldName(field)}`;

export const fieldName = (field: Field): string => cellTitle(field).toLowerCase();

/** What heads a cell of its own: `Address`. */
export const cellTitle = (field: Field): string =>
  field === 'order' ? 'Place in the sheet' : field === 'along' ? 'Place on the run' : COLUMN_WORDS[field].name;

/** A cell's value within a sentence. */
export const valueWords = (field: Field, value: CellValue): string =>
  value === null ? LOST_WORDS.empty : formatCell(field, value);

export const NOTICE_WORDS = {
  undone: (plan: PlanName) => `Taken back: ${PLAN_NAMES[plan].toLowerCase()}.`,
  redone: (plan: PlanName) => `Done again: ${PLAN_NAMES[plan].toLowerCase()}.`,
  nothingToUndo: 'There is no step of yours to take back.',
  nothingToRedo: 'There is no step of yours to do again.',
  noFinding: 'There is no such finding.',
  leftOut: (cells: number) =>
    `${count(cells, 'pasted cell')} had no place here: past the last column, or on the footprint, which follows from type and mode. Paste further to the left.`,
  cutShort: 'The pasted text was too long; its last rows were left out. Take it in as a list instead.',
  tooManyRows: (rows: number, limit: number) =>
    `${rows.toLocaleString('en')} new rows at once are too many; nothing was pasted. Paste at most ${limit.toLocaleString('en')}, or take them in as a list.`,
  notFound: (text: string) => `Nothing found for “${text}”.`,
  rowGone: (text: string) =>
    text === ''
      ? 'The row you were in was removed by somebody else.'
      : `The row you were typing in was removed by somebody else. You had typed “${text}”.`,
  readOnly: 'Nothing was changed: you are a reader here. Ask a lead of the crew to make you an editor.',
  locked: 'Nothing was changed.',
  notARig: 'Nothing was changed: the rig has not arrived yet. Wait a moment and try again.',
  newerFormat: 'Nothing was changed: a newer version of this program wrote this rig. Reload the page.',
  tooManyEdits: (edits: number, limit: number) =>
    `Nothing was changed: ${edits.toLocaleString('en')} cells at once are too many. Do at most ${limit.toLocaleString('en')} at a time.`,
  malformed: (problem: string) =>
    `Nothing was changed: one of the values cannot be kept (${problem}). Shorten it, or leave out what is not text.`,
  done: (plan: PlanName) => `Done: ${PLAN_NAMES[plan].toLowerCase()}.`,
  dismiss: 'Dismiss',
} as const;

export const TYPES_WORDS = {
  title: 'Types in use',
  about:
    'What the units are, and the slots of each break of their modes. A type taken from the library brings what every slot does with it. Removing a mode does not touch the units that are set to it.',
  type: 'Type',
  mode: 'Mode',
  slots: 'Slots',
  slotsOf: (type: string, mode: string) => `Slots of ${mode === '' ? type : `${type}, ${mode}`}`,
  modeOf: (type: string) => `Mode of ${type}`,
  units: (units: number) => count(units, 'unit'),
  add: 'Add a mode',
  addWord: 'Add it',
  remove: (type: string, mode: string) => `Remove ${type}, ${mode}`,
  removeWord: 'remove',
  unknown: 'Used by units, but not described here:',
  describe: (type: string, mode: string) => `Say how many slots ${mode === '' ? type : `${type}, ${mode}`} takes`,
  describeWord: 'say its slots',
  badSlots: 'Slots are one to four whole numbers from 0 to 512, at least one above 0: 27, or 1+1.',
  noName: 'A type needs a name.',
  none: 'No type is described yet. Add the modes that the units are set to; then slots, clashes and free room can be told.',
} as const;

export const POSITIONS_WORDS = {
  title: 'Positions',
  about:
    'The order in which positions stand in the sheet and on paper. Positions that are only typed in a row come after them.',
  name: 'Position',
  up: (name: string) => `Move ${name} up`,
  down: (name: string) => `Move ${name} down`,
  remove: (name: string) => `Take ${name} out of the order`,
  removeWord: 'take out',
  addWord: 'put in order',
  add: (name: string) => `Put ${name} into the order`,
  count: (units: number) => count(units, 'unit'),
  none: 'No position is in order yet.',
  unlisted: 'Typed in rows only:',
} as const;

export const NOTES_WORDS = {
  title: 'Notes of the rig',
  about: 'For everybody who opens this rig.',
  note: (n: number) => `Note ${n}`,
  add: 'Add a note',
  remove: (n: number) => `Remove note ${n}`,
  removeWord: 'remove',
  none: 'No note yet.',
} as const;

export const PHONE_WORDS = {
  channel: 'channel',
  universe: 'universe',
  address: 'address',
  addressOfBreak: (part: number) => `address of break ${part}`,
  notPatched: 'not patched',
  previous: 'Previous',
  next: 'Next',
  back: 'List',
} as const;

export const PEOPLE_WORDS = {
  here: 'Here now',
  more: (people: number) => `and ${people} more`,
} as const;

/** What more there is to say about where edits stand. */
export const STATUS_WORDS = {
  waiting: (edits: number) => `${count(edits, 'edit')} ${edits === 1 ? 'waits' : 'wait'} for the network`,
  noNetwork: 'no connection',
  onlyHere: (edits: number) => `${count(edits, 'edit')} only in this page: keep it open`,
  tooLarge: 'one edit is too large for the server: undo it',
  signedOut: (edits: number) =>
    edits === 0 ? 'you are signed out: sign in again' : `${count(edits, 'edit')} wait on this device: sign in again`,
  noSuchRig: 'this rig is not yours any more',
  otherVersion: 'this page is of another version: load it again',
  notKept: 'this device keeps no copy',
} as const;

export const PLANS_WORDS = {
  title: 'Plans',
  about: (units: number) =>
    `For the ${count(units, 'selected unit')}, in the order of the sheet. What moves or renumbers is shown before it is carried out; every step can be undone.`,
  address: 'Address',
  addressHint: 'In any notation: 2:101, 2/101, 2.101 or 613.',
  badAddress: 'This is no address. Write universe and slot, as in 2:101.',
  place: 'Next free addresses from there',
  move: (to: string) => `Move them so that they begin at ${to}`,
  swap: 'Swap the addresses of two',
  first: 'First number',
  step: 'Step',
  badNumber: 'First number and step are whole numbers.',
  channels: 'Renumber channels',
  units: 'Renumber units',
  rows: 'Rows',
  duplicate: 'Duplicate',
  remove: 'Remove',
  fillDown: 'Fill down',
  series: 'Fill a series',
  seriesAbout:
    'Goes on from the first selected row, in the selected columns: channel and unit + 1, address + footprint.',
} as const;
