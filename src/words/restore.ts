import { getRow } from '#base/table.ts';
import type { LineState, LooseTick, RestoreLine } from '#engine/diff/restore.ts';
import { unitOfTask } from '#engine/diff/task-groups.ts';
import type { UnitTaskKind } from '#engine/diff/tasks.ts';
import { fixtureId, isId } from '#engine/model/ids.ts';
import type { Tick } from '#engine/model/record.ts';
import type { Rig } from '#engine/model/rig.ts';
import type { RestoreStanding } from '#engine/sheet/restore-sheet.ts';
import type { Provenance } from '#wire/record.ts';
import { unitName } from './findings.ts';
import { counted, RIG_KIND_WORDS, sayMoment } from './screens.ts';
import { madeLine } from './sheets.ts';
import { TASK_STANDING } from './task-cells.ts';
import { rigTaskSentence, UNIT_TASK_TITLES, unitTaskSentence } from './tasks.ts';

export const LINE_STATE_WORDS: Readonly<Record<LineState, string>> = {
  open: 'to do',
  done: 'done',
  stays: 'stays as it is',
};

/** The page on which a show rig is put back to what its house's record says. */
export const RESTORE_WORDS = {
  title: 'Put back',
  none: 'This rig began empty, so that there is no house rig to put back. A show that starts from a revision of a house rig, on that rig’s page of revisions, has a sheet here of what to put back.',
  record: 'Put back to',
  done: 'Done',
  stays: 'Stays',
  view: 'Lines to show',
  views: { open: 'To do', all: 'All' },
  hide: (count: number) => `Hide ${counted(count, 'ticked line')}`,
  print: 'Print',
  csv: 'Take out as CSV',
  propose: 'Propose to the house…',
  noPosition: 'At no position',
  rig: 'Network, lines, feeds and stock',
  paper: 'On paper only',
  paperAbout: 'Nobody has to go there: only the record says it anew.',
  loose: 'Ticks whose line is gone',
  looseAbout: 'Somebody changed what this rig says since these were ticked.',
  elsewhere: (count: number) =>
    `${counted(count, 'tick')} on the sheet of another record ${count === 1 ? 'is' : 'are'} not counted here.`,
  allDone: 'Nothing is left to put back.',
  nothing: 'Nothing is to be put back: the rig is as that record says.',
  nothingShown: 'No line is left here. Choose “All” to see what was ticked.',
  nothingToDo: 'Nothing is to be put back.',
  mind: 'Weights and feeds are moved: what to mind',
  keys: 'Arrow keys go from line to line, space ticks.',
  unreachable:
    'The record to put back to is not on this device yet, and the server does not answer. Open this page once with the network: it then opens without.',
  unreadable: 'The record to put back to cannot be read by this page. Reload the page; a newer version may be there.',
  foreign: 'You may not read the record to put back to any more. Ask the lead of its crew.',
} as const;

/** `4 of 12 left`, of the lines of one position. */
export const leftWords = (open: number, all: number): string =>
  open === 0 ? `none of ${all} left` : `${open.toLocaleString('en-GB')} of ${all.toLocaleString('en-GB')} left`;

/** How far one is: `7 of 12 put back · 2 stay as they are · 3 to do`. */
export function progressWords({ open, done, stays }: Readonly<Record<LineState, number>>): string {
  const all = open + done + stays;
  const parts = [
    `${done.toLocaleString('en-GB')} of ${all.toLocaleString('en-GB')} put back`,
    stays === 0 ? '' : stays === 1 ? '1 stays as it is' : `${stays.toLocaleString('en-GB')} stay as they are`,
    open === 0 ? RESTORE_WORDS.allDone.toLowerCase().replace('.', '') : `${open.toLocaleString('en-GB')} to do`,
  ];
  return parts.filter((part) => part !== '').join(' · ');
}

/** Who ticked and when: `Bram Kettle, 25 Nov, 14:02`. */
export function tickWords({ by, at }: Tick): string {
  const moment = Number.isNaN(Date.parse(at)) ? '' : sayMoment(at);
  return [by, moment].filter((part) => part !== '').join(', ');
}

/** What a line asks for, as a sentence. */
export const lineSentence = (line: RestoreLine): string =>
  line.at === 'unit' ? unitTaskSentence(line.task) : rigTaskSentence(line.task);

/** The same with the unit that it is at. */
export const wholeSentence = (line: RestoreLine): string =>
  line.at === 'unit'
    ? `${unitName(unitOfTask(line.task))}: ${unitTaskSentence(line.task)}`
    : rigTaskSentence(line.task);

/** A tick whose line is gone: what it was of, as far as it can still be told. */
export function looseSentence({ task, tick }: LooseTick, rigs: readonly Rig[]): string {
  const cut = task.lastIndexOf(' ');
  const id = task.slice(0, Math.max(cut, 0));
  const kind = UNIT_TASK_TITLES[task.slice(cut + 1) as UnitTaskKind];
  const unit = isId(id) ? rigs.map((rig) => getRow(rig.fixtures, fixtureId(id))).find((row) => row) : undefined;
  const what =
    kind === undefined ? 'Something of the rig' : `${unit ? unitName(unit) : 'A unit that is gone'}: ${kind}`;
  return [what, LINE_STATE_WORDS[tick.state], tickWords(tick)].filter((part) => part !== '').join(' · ');
}

/** What the sheet restores to, in words. */
export function recordWords({ rigName, rigKind, number, venueName }: Provenance): string {
  const where = venueName === null || rigKind === 'show' ? '' : ` at ${venueName}`;
  return `revision ${number} of ${rigName}${where}, as which this rig began`;
}

export const newerWords = (rigName: string, number: number): string => `revision ${number} of ${rigName}, its newest`;

/** What to know of what one puts back to: whether it is the house's, and where it came from. */
export const aboutRecord = ({ rigKind, rigName }: Provenance): string =>
  rigKind === 'house'
    ? ''
    : `This rig began as the ${RIG_KIND_WORDS.show} ${rigName}, not as a house rig: its sheet says what to do so that the rig is as that show was.`;

/** How lines are said on the sheet that is taken out. */
export const RESTORE_STANDING: RestoreStanding = { ...TASK_STANDING, state: (state) => LINE_STATE_WORDS[state] };

/** The lines above a restore sheet. `madeAt` is in milliseconds since 1970. */
export const restoreHead = (rigName: string, record: string, madeAt: number): readonly string[] => [
  'Restore sheet',
  `Rig: ${rigName}`,
  `To be put back to ${record}`,
  madeLine(madeAt),
];
