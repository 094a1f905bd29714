import type { Hire, Reading, Spare } from '#engine/model/record.ts';
import type { HireState } from '#engine/upkeep/hires-due.ts';
import type { ReadingStep } from '#engine/upkeep/unit-story.ts';
import { counted } from './screens.ts';

/** The page of upkeep, and what of it stands at a unit. */
export const UPKEEP_WORDS = {
  title: 'Upkeep',
  reader: 'You are a reader here: the upkeep is shown as it stands.',
  parts: { faults: 'Faults', swaps: 'Swaps', readings: 'Hours and firmware', hires: 'Hired in' },
  jump: 'Parts of this page',
  unit: 'Unit',
  unitHint: 'position and number, or channel',
  what: 'What is wrong',
  by: 'Seen by',
  on: 'On',
  who: 'By',
  report: 'Report a fault',
  reportAt: (unit: string) => `Report a fault of ${unit}`,
  reportWord: 'Report it',
  reported: (unit: string) => `Reported: ${unit}.`,
  /** What goes wrong most, to be tapped (common practice). */
  usual: ['no light', 'does not answer', 'does not move', 'colour is wrong', 'flickers', 'loose or bent', 'smells hot'],
  hot: 'What smells hot, smokes or shocks is switched off at its circuit first. A competent person opens it, not the one who found it.',
  other: 'Something else',
  noSuchUnit: 'No unit is called so. Write position and number, such as Bar 1 5, or a channel.',
  manySuchUnits: (names: readonly string[]) => `Several units are called so: ${names.join(', ')}. Write it in full.`,
  openFaults: (n: number) => (n === 0 ? 'No fault is open.' : `${counted(n, 'fault')} open`),
  mendedFaults: (n: number) => `${counted(n, 'fault')} mended`,
  mend: 'Mended…',
  mendOf: (unit: string, what: string) => `Mark mended: ${unit}, ${what}`,
  mendTitle: (unit: string) => `Mended: ${unit}`,
  mendWord: 'Mark it mended',
  done: 'What was done',
  reopen: 'open again',
  reopenOf: (unit: string, what: string) => `Open again: ${unit}, ${what}`,
  swap: 'Swap a device',
  swapAt: 'Swap…',
  swapOf: (unit: string) => `Swap the device of ${unit}`,
  swapTitle: (unit: string) => `Swap the device of ${unit}`,
  swapAbout: 'Channel, position, number and addresses stay. What firmware the old device had is forgotten.',
  swapCaution:
    'Take power off first. Hanging and rigging by competent people; a unit is held by its safety bond until it is down.',
  comesFrom: 'What comes in',
  elsewhere: 'a device that is no spare',
  where: 'Where it comes from',
  type: 'Type, if another',
  mode: 'Mode, if another',
  serialOut: 'Serial number out',
  serialIn: 'Serial number in',
  why: 'Why',
  mends: 'Fault that it mends',
  mendsNone: 'none',
  swapped: 'Device swapped',
  swapWord: 'Swap it',
  noSwaps: 'No device was swapped.',
  note: 'Note a reading',
  noteWord: 'Note it',
  of: 'What',
  value: { lamp: 'Hours', service: 'Hours', firmware: 'Firmware' } satisfies Record<Reading['of'], string>,
  ofWords: { lamp: 'lamp hours', service: 'hours since service', firmware: 'firmware' } satisfies Record<
    Reading['of'],
    string
  >,
  toUnit: 'Write it to the unit too',
  noReadings: 'Nothing was read yet.',
  hire: { item: 'Item', count: 'Number', from: 'From', due: 'Due back', returned: 'Returned', notes: 'Notes' },
  giveBack: 'given back today',
  giveBackOf: (item: string) => `${item} is given back today`,
  story: 'Everything about it',
  storyOf: (unit: string) => `Everything about ${unit}`,
  storyNone: 'Nothing is written of it yet: no fault, no swap, no reading.',
  noUnit: 'Select a unit to see its upkeep.',
  goneUnit: (called: string) => (called === '' ? 'a unit that is gone' : `${called}, which is gone`),
  toPage: 'All upkeep',
  remove: 'remove',
  removeOf: (what: string) => `Remove ${what}`,
  more: (n: number) => `Show all ${n.toLocaleString('en-GB')}`,
  cancel: 'Leave it',
} as const;

/** `Bram Kettle, 2026-11-20`, as far as it is known. */
export const byOn = (by: string, on: string): string => [by, on].filter((part) => part !== '').join(', ');

/** `412.5 lamp hours, 60.5 more`; `firmware 1.6, before 1.4`. */
export function readingText({ reading, hours, before }: ReadingStep): string {
  if (reading.of === 'firmware') return `firmware ${reading.firmware}${before === '' ? '' : `, before ${before}`}`;
  const value = `${reading.hours ?? '?'} ${UPKEEP_WORDS.ofWords[reading.of]}`;
  return hours === null ? value : `${value}, ${changeText(hours)}`;
}

function changeText(hours: number): string {
  // What is taken from sums of tenths has a tail of binary dust.
  const size = Math.round(Math.abs(hours) * 100) / 100;
  if (size === 0) return 'as before';
  return hours > 0 ? `${size} more` : `${size} less: another lamp, or set back`;
}

/** What came instead of what: `A 17 out, A 22 in, from Spot, crate 4`. */
export function swapText(swap: { readonly out: string; readonly in: string; readonly from: string }): string {
  const parts = [
    swap.out === '' ? '' : `${swap.out} out`,
    swap.in === '' ? '' : `${swap.in} in`,
    swap.from === '' ? '' : `from ${swap.from}`,
  ];
  return parts.filter((part) => part !== '').join(', ');
}

/** Where a hired item stands, in words: it is never told by colour alone. */
export const HIRE_STATE_WORDS: Readonly<Record<HireState, string>> = {
  returned: 'returned',
  due: 'to go back',
  overdue: 'overdue',
  'no-day': 'no day is said',
};

/** `2 × Fogbank hazer of Tide Hire, due back 2026-12-05`. */
export function hireText({ item, count, from, due, returned }: Hire): string {
  const what = `${count === 1 ? '' : `${count} × `}${item}${from === '' ? '' : ` of ${from}`}`;
  if (returned !== '') return `${what}, returned ${returned}`;
  return due === '' ? what : `${what}, due back ${due}`;
}

/** `Halyard spot, Standard · 2 left · crate 4`. */
export function spareText({ type, mode, count, where }: Spare): string {
  const name = mode === '' ? type : `${type}, ${mode}`;
  const left = count === null ? 'not counted' : count === 0 ? 'none left' : `${count.toLocaleString('en-GB')} left`;
  return [name, left, where].filter((part) => part !== '').join(' · ');
}
