import { unreachable } from '#base/unreachable.ts';
import type { DraftRow, FactField } from '#engine/draft/draft.ts';
import type { LostInChart } from '#engine/draft/open-chart.ts';
import { counted } from './screens.ts';

export const DRAFT_SCREEN_WORDS = {
  title: 'Draft of a fixture type',
  unnamed: 'New fixture type',
  from: (revision: number | null) => (revision === null ? 'draft of a new type' : `draft, from revision ${revision}`),
  gone: 'this draft is not yours any more',
  reader: 'You are a reader here: look at everything, change nothing. A lead of the crew can make you an editor.',
  published: 'This draft was published. Nothing changes here any more.',
  dropped: 'This draft was dropped. Nothing changes here any more.',
  toType: 'Look at the type',
  toLibrary: 'To the library',
  tools: 'Tools of the draft',
  undo: 'Undo',
  redo: 'Redo',
  keys: 'Keys',
  drop: 'Drop this draft',
  dropTitle: 'Drop this draft?',
  dropAbout: 'Nobody in the crew can go on with it. The library keeps what was published before.',
  publish: 'Publish',
  addMode: 'Add a mode',
  modes: 'Modes',
  newMode: 'New mode',
  unnamedMode: '(no name)',
  noMode: 'No mode yet. Paste its chart from the manual below, or add a mode and write it row by row.',
  modeName: 'Name of the mode',
  modeNameHint: 'As the manual or the unit’s menu calls it.',
  firmware: 'Firmware',
  firmwareHint: 'Versions, with commas; empty: all.',
  description: 'About this mode',
  pastedMode: (slots: number) => counted(slots, 'slot'),
  copyMode: 'Copy this mode',
  removeMode: 'Remove this mode',
  removeModeTitle: (name: string) => `Remove the mode “${name}”?`,
  removeModeAbout: (rows: number) => `Its ${counted(rows, 'row')} go with it. Undo brings it back.`,
  removeModeSubmit: 'Remove it',
  kept: 'Kept slot by slot as it was when this draft began.',
  openChart: 'Open its chart',
  openChartTitle: 'Open this chart for writing?',
  openChartSame: 'Everything in it has a place in a chart.',
  openChartLost: 'A chart has no place for some of it. This goes:',
  openChartStays: 'Leave the mode as it is, and all of it stays.',
  leave: 'Leave it',
  rows: 'Rows',
  addRow: 'Add a row',
  removeRows: 'Remove rows',
  paste: 'Paste a chart',
  repeat: 'Repeat',
  renumber: 'Number from here',
  grid: 'Slot chart',
  margin: 'To check',
  noRows: 'This chart has no rows yet.',
  toConfirm: (count: number) => `${counted(count, 'guess', 'guesses')} to confirm`,
  guessed: 'Guessed: F9 confirms it',
  guessedShort: 'guessed',
  confirm: 'Confirm the guess',
  times: (count: string, name: string) => `× ${count}${name === '' ? '' : ` ${name}`}`,
  rangesHint:
    'One a line: 0-10 Closed. What changes goes in brackets: 11-127 Strobe [Shutter1Strobe]. Ctrl+Enter or Tab closes.',
  more: (count: number) => `+ ${count} more`,
  troubles: 'To put right before publishing',
  warnings: 'To look at',
  ready: 'Nothing stops it any more.',
  publishIt: 'Publish this type',
  rowOf: (at: number, of: number) => `Row ${at} of ${of}`,
  list: 'All rows',
  next: 'Next',
  previous: 'Previous',
} as const;

export const SLOT_WORDS = {
  title: 'Slots',
  strip: (number: number) => `Slots of break ${number}`,
  break: (number: number, slots: number) => `Break ${number}: ${counted(slots, 'slot')}`,
  one: (slots: number) => counted(slots, 'slot'),
  none: 'No slots yet.',
  hole: 'not used',
  twice: 'taken twice',
  nothing: 'not said',
  bytes: ['coarse', 'fine', 'third byte', 'fourth byte'],
  cell: (cell: number) => `cell ${cell}`,
  slot: (slot: number) => `Slot ${slot}`,
} as const;

export const PASTE_WORDS = {
  title: 'Paste a chart',
  label: 'The chart, as copied from the manual',
  hint: 'Text or a table, pages and all. It shows at once what it becomes; nothing is taken in before you say so.',
  placeholder: '1  Dimmer  0-255\n2  Shutter  0-10 Closed…',
  reading: (modes: number, rows: number) =>
    modes === 1 ? counted(rows, 'row') : `${counted(modes, 'mode')}, ${counted(rows, 'row')}`,
  guesses: (count: number) => `${counted(count, 'guess', 'guesses')} to confirm afterwards`,
  leftOut: (count: number) => `${counted(count, 'line')} left out`,
  repeats: 'Rows that come again. Tick to write them once:',
  remarks: 'To check with the manual',
  take: (rows: number) => `Take ${counted(rows, 'row')}`,
  takeModes: (modes: number) => `Take ${counted(modes, 'mode')}`,
  instead: (rows: number) => `Take them instead of the ${counted(rows, 'row')} that are there`,
  nothing: 'No row was found in it. A line of a chart begins with its slot, such as “1 Dimmer”.',
  mode: (name: string, at: number) => (name === '' ? `Chart ${at}` : name),
  slots: 'Slots',
  name: 'In the manual',
  attribute: 'Attribute',
  ranges: 'Ranges',
  line: (line: number) => `Line ${line}`,
  more: (count: number) => `and ${counted(count, 'more row')}`,
  moreLines: (count: number) => `and ${counted(count, 'more line')}`,
} as const;

export const REPEAT_WORDS = {
  title: (rows: number) => `Repeat ${counted(rows, 'row')}`,
  changeTitle: 'Change this repeat',
  about:
    'The rows stand for the first cell. Rows below keep their slots: number them from here on afterwards if they move.',
  count: 'How many times',
  name: 'What one is called',
  nameHint: 'Such as Pixel or Head.',
  step: 'Slots from one to the next',
  stepHint: (slots: number) => `Empty: as many as the rows span, which is ${slots}.`,
  badCount: 'Write a number from 2 to 512.',
  badStep: 'Write a number from 1 to 512, or nothing.',
  submit: 'Repeat them',
  change: 'Change it',
  once: 'Let them come once',
} as const;

export const RENUMBER_WORDS = {
  title: 'Number from here on',
  about: 'The row and all rows of its break below it move by the same number of slots.',
  first: 'First slot of this row',
  bad: 'Write a slot from 1 to 512.',
  submit: 'Number them',
} as const;

export const PUBLISH_WORDS = {
  title: 'Publish this type',
  about:
    'Publishing makes a revision that never changes. Rigs keep the one they have until somebody takes the new one.',
  note: 'What is new, for the crew',
  submit: 'Publish',
  stops: 'This stops it:',
  warns: 'This does not stop it, but look at it:',
  guesses: (count: number) =>
    `${counted(count, 'attribute')} ${count === 1 ? 'was' : 'were'} guessed and nobody has confirmed ${count === 1 ? 'it' : 'them'} yet.`,
  unsaved: 'Not everything is saved yet. Publishing waits for that.',
  stopped: {
    what: 'It was not published: meanwhile somebody wrote something that stops it.',
    next: 'Close this, put right what is listed, and publish again.',
  },
  show: 'Show',
  close: 'Close',
} as const;

export const FACTS_WORDS = {
  title: 'The unit',
  more: 'What the manual says of the unit',
  hints: {
    shortName: 'For labels.',
    weight: 'kg',
    power: 'watts',
    powerFactor: '0 to 1',
    voltage: 'such as 100-240',
    connector: 'such as 16 A CEE',
    perBreaker: 'One breaker a line: 16 A C: 5',
    onLoss: 'such as: holds, then goes dark after 3 s',
  } satisfies Partial<Record<FactField, string>> as Partial<Record<FactField, string>>,
  switches: {
    '': 'Not stated, or none',
    A: 'They show the address',
    B: 'They show the address less 1',
  },
  switchesAbout: {
    '': '',
    A: 'For address 1 the switches stand at 1.',
    B: 'For address 1 the switches stand at 0.',
  },
  noLaser: 'No laser',
  laserClass: (name: string) => (name === 'unknown' ? 'Class not stated' : `Class ${name}`),
  hazards: 'What can hurt',
  suggested: 'What its slots do gives these away:',
  tick: (name: string) => `Tick “${name}”`,
} as const;

/** What a slot of a chart does, in the fewest words. */
export const rowWord = ({ attribute, name }: Pick<DraftRow, 'attribute' | 'name'>): string =>
  attribute || name || SLOT_WORDS.nothing;

const LOST_WORDS: Readonly<Record<keyof LostInChart, (count: number) => string>> = {
  conditions: (count) => `${counted(count, 'condition')} under which a function works; the functions stay`,
  physical: (count) => `physical values of ${counted(count, 'function or range', 'functions and ranges')}`,
  uses: (count) => `${counted(count, 'second use', 'second uses')} of a channel`,
  fine: (count) => `${counted(count, 'start')} of a function or range between two 8 bit steps`,
  settings: (count) => `how ${counted(count, 'channel')} snap or follow a master`,
  channels: (count) => `${counted(count, 'channel')} without a slot in this mode, or too many for a chart`,
};

/** What a chart has no place for, one line each. */
export const lostLines = (lost: LostInChart): readonly string[] =>
  (Object.keys(LOST_WORDS) as (keyof LostInChart)[])
    .filter((kind) => lost[kind] > 0)
    .map((kind) => LOST_WORDS[kind](lost[kind]));

type Notice =
  | { readonly kind: 'refused'; readonly refusal: { readonly code: string } }
  | { readonly kind: 'taken'; readonly rows: number; readonly modes: number; readonly guesses: number }
  | { readonly kind: 'left-out'; readonly cells: number }
  | { readonly kind: 'confirmed'; readonly left: number }
  | { readonly kind: 'row-gone'; readonly text: string }
  | { readonly kind: 'undone' | 'redone' | 'nothing-to-undo' | 'nothing-to-redo' | 'no-trouble' | 'no-guess' }
  | { readonly kind: 'not-renumbered' };

/** What the screen tells in its one line. */
export function draftNotice(notice: Notice): string {
  switch (notice.kind) {
    case 'refused':
      return REFUSED[notice.refusal.code] ?? REFUSED_ELSE;
    case 'taken': {
      const what = PASTE_WORDS.reading(notice.modes, notice.rows);
      if (notice.guesses === 0) return `Took ${what}.`;
      return `Took ${what}. ${counted(notice.guesses, 'attribute')} ${notice.guesses === 1 ? 'is' : 'are'} guessed: confirm them one by one (F9).`;
    }
    case 'left-out':
      return `${counted(notice.cells, 'cell')} found no column and ${notice.cells === 1 ? 'was' : 'were'} not pasted.`;
    case 'confirmed':
      return notice.left === 0 ? 'Every attribute is confirmed.' : `${counted(notice.left, 'guess', 'guesses')} left.`;
    case 'row-gone':
      return notice.text === ''
        ? 'Somebody removed the row you were in.'
        : `Somebody removed the row you were in. You had typed: ${notice.text}`;
    case 'undone':
      return 'Your last step is taken back.';
    case 'redone':
      return 'Your step is done again.';
    case 'nothing-to-undo':
      return 'There is no step of yours to take back.';
    case 'nothing-to-redo':
      return 'There is no step to do again.';
    case 'no-trouble':
      return 'No row has anything to put right.';
    case 'no-guess':
      return 'No attribute of this mode waits to be confirmed.';
    case 'not-renumbered':
      return 'These rows cannot be numbered so: a slot would come before slot 1, or the row has none.';
    default:
      return unreachable(notice);
  }
}

const REFUSED: Readonly<Record<string, string>> = {
  'read-only': 'This draft takes no edits from you.',
  'not-a-draft': 'The draft has not arrived yet. Wait a moment.',
  'newer-format': 'This draft was written by a newer version. Load the page again.',
  'too-many-edits': 'That is too much at once. Paste fewer rows.',
};
const REFUSED_ELSE = 'A text was too long for its cell. Make it shorter; nothing of this step was written.';

/** The keys under the chart: those one needs with a manual on the knee. */
export const KEY_LINE: readonly (readonly [keys: string, does: string])[] = [
  ['Enter', 'write'],
  ['Tab', 'next cell'],
  ['F9', 'confirm a guess, go to the next'],
  ['Insert', 'new row'],
  ['Ctrl+V', 'paste a chart'],
  ['F8', 'next to check'],
  ['F6', 'slots'],
  ['F1', 'all keys'],
];

export const DRAFT_KEYS: readonly {
  readonly title: string;
  readonly keys: readonly (readonly [keys: string, does: string])[];
}[] = [
  {
    title: 'Go',
    keys: [
      ['Arrows', 'one cell on'],
      ['Ctrl and an arrow', 'to the edge of the chart'],
      ['Home, End', 'first and last cell of the row'],
      ['Tab, Shift+Tab', 'next and previous cell'],
      ['Esc, then Tab', 'out of the chart'],
      ['F6', 'to the slots and back'],
      ['F8, Shift+F8', 'next and previous row with something to check'],
      ['F9', 'confirms the guess of every selected row and goes to the next guess'],
    ],
  },
  {
    title: 'Write',
    keys: [
      ['Any letter or digit', 'writes over the cell'],
      ['Enter or F2', 'opens the cell; in the column Repeat, its window'],
      ['Enter, Tab', 'closes it and goes down, or on; in Ranges, Enter begins a new line'],
      ['Ctrl+Enter', 'writes into every selected cell; in Ranges, closes the cell'],
      ['Esc', 'leaves the cell as it was'],
      ['Delete', 'empties the selected cells'],
      ['Ctrl+D', 'fills the first row down'],
    ],
  },
  {
    title: 'Rows and steps',
    keys: [
      ['Insert or Alt+Enter', 'new row below, with the next slot'],
      ['Alt+Shift+Enter', 'copies the selected rows below'],
      ['Alt+Up, Alt+Down', 'moves the selected rows'],
      ['Ctrl+Delete', 'removes the selected rows'],
      ['Shift and a key that goes', 'stretches the selection'],
      ['Ctrl+A', 'selects everything'],
      ['Ctrl+C, Ctrl+X, Ctrl+V', 'copy, cut and paste; several lines from elsewhere are read as a chart'],
      ['Ctrl+Z', 'takes back my last step'],
      ['Ctrl+Shift+Z or Ctrl+Y', 'does it again'],
    ],
  },
];
