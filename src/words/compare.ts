import { unitOfTask } from '#engine/diff/task-groups.ts';
import type { RigTaskKind, Tasks, UnitTask, UnitTaskKind } from '#engine/diff/tasks.ts';
import type { Fixture } from '#engine/model/fixture.ts';
import { unitName } from './findings.ts';
import { counted } from './screens.ts';
import { madeLine } from './sheets.ts';
import { RIG_TASK_TITLES, UNIT_TASK_TITLES } from './tasks.ts';

/** Two rigs beside each other: what differs, and what somebody has to do about it. */
export const COMPARE_RIGS_WORDS = {
  views: { table: 'Table', sheet: 'Change sheet' },
  view: 'Show as',
  all: 'All',
  filter: 'Only one kind of change',
  unit: 'Unit',
  what: 'What changes',
  change: 'From → to',
  was: 'was ',
  becomes: 'is to be ',
  nothing: 'nothing',
  caption: 'What differs',
  ofRig: 'Whole rig',
  noPosition: 'At no position',
  print: 'Print',
  csv: 'Take out as CSV',
  sheetAbout: 'Each line is one thing to do. Done in any order, all of them make one rig the other.',
  channel: (channel: number) => `channel ${channel}`,
  nothingToDo: 'Nothing is to be done.',
} as const;

/** What a kind of change is called. */
export const taskTitle = (kind: UnitTaskKind | RigTaskKind): string =>
  ({ ...UNIT_TASK_TITLES, ...RIG_TASK_TITLES })[kind];

/** `From revision 3 to now`. */
const fromTo = (before: string, after: string): string => `From ${before} to ${after}`;

/** How much differs: `From revision 3 to now: 14 things to do at 9 units, and 2 for the whole rig.` */
export function differenceSentence({ units, rig }: Tasks, before: string, after: string): string {
  if (units.length + rig.length === 0) return `Nothing differs between ${before} and ${after}.`;
  const named = new Set(units.map((task) => unitOfTask(task)?.id)).size;
  const atUnits = units.length === 0 ? [] : [`${counted(units.length, 'thing')} to do at ${counted(named, 'unit')}`];
  const ofRig = rig.length === 0 ? [] : [`${counted(rig.length, 'thing')} for the whole rig`];
  return `${fromTo(before, after)}: ${[...atUnits, ...ofRig].join(', and ')}.`;
}

/** `3 things at 2 units`: how much there is to do at one position. */
export const placeCount = (things: number, units: number): string =>
  `${counted(things, 'thing')} at ${counted(units, 'unit')}`;

/** What else a unit is known by, beside its number: `channel 12 · Wash (Short)`. */
export function unitAbout({ channel, type, mode }: Fixture): string {
  const what = type.trim() === '' ? '' : `${type.trim()}${mode.trim() === '' ? '' : ` (${mode.trim()})`}`;
  return [channel === null ? '' : COMPARE_RIGS_WORDS.channel(channel), what].filter((text) => text !== '').join(' · ');
}

/** What a unit is called within its position. */
export const unitNumber = (unit: Fixture): string => (unit.unit.trim() === '' ? unitName(unit) : unit.unit.trim());

/** A unit in a table of changes: by where it will be, or was when it goes. */
export const changedUnit = (task: UnitTask): string => unitName(unitOfTask(task));

/** The lines above a change sheet. `madeAt` is in milliseconds since 1970. */
export const changeSheetHead = (
  rigName: string,
  names: { readonly before: string; readonly after: string },
  madeAt: number,
) => [COMPARE_RIGS_WORDS.views.sheet, `Rig: ${rigName}`, fromTo(names.before, names.after), madeLine(madeAt)] as const;
