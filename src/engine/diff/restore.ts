import { groupBy } from '#base/group-by.ts';
import { differingRows } from '#base/table.ts';
import { CARD_KEY_LIMIT, type Card, type CardKind, tickKey } from '../model/card.ts';
import { type FixtureId, type PositionId, positionId } from '../model/ids.ts';
import { recordOf, type Tick } from '../model/record.ts';
import type { Rig } from '../model/rig.ts';
import { type RigTask, type Tasks, tasksOf, type UnitTask } from './tasks.ts';

/** Where a line of a restore sheet stands: nobody said anything yet, it is put back, or it is to stay as it is. */
export type LineState = 'open' | Tick['state'];

interface Ticked {
  /** The key of its tick. */
  readonly key: string;
  readonly state: LineState;
  readonly tick: Tick | undefined;
}

export interface UnitLine extends Ticked {
  readonly at: 'unit';
  readonly task: UnitTask;
}

interface RigLine extends Ticked {
  readonly at: 'rig';
  readonly task: RigTask;
}

export type RestoreLine = UnitLine | RigLine;

/** What is to be put back at one unit, in the order in which one does it there. */
export interface RestoreUnit {
  readonly id: FixtureId;
  readonly lines: readonly UnitLine[];
}

export interface RestorePlace {
  readonly id: PositionId;
  /** Its name as the lines have it; empty for units of no position. */
  readonly position: string;
  readonly units: readonly RestoreUnit[];
}

/** A tick of a line that is not there any more: somebody changed what the rig says since. */
export interface LooseTick {
  /** The key of its task. */
  readonly task: string;
  readonly tick: Tick;
}

export interface RestoreSheet {
  /** Position by position, unit by unit: what somebody goes there for. */
  readonly places: readonly RestorePlace[];
  /** At the network, data lines, feeds and limits, and in the stock. */
  readonly rig: readonly RigLine[];
  /** What only the record has to say anew: nobody climbs for it. */
  readonly paper: readonly RestoreLine[];
  readonly loose: readonly LooseTick[];
  /** How many ticks were made on the sheet of another record. */
  readonly elsewhere: number;
}

/** Kinds of cards that say what happened to a rig, not how it is: nobody puts them back. [RS1] */
const HAPPENED: ReadonlySet<CardKind> = new Set(['tick', 'fault', 'swap', 'reading']);

export const hasHappened = (kind: CardKind): boolean => HAPPENED.has(kind);

/** Whether a task is of a card that says what happened. */
export const isHappening = ({ key, row }: RigTask): boolean => {
  const card = (row.after ?? row.before) as Card | undefined;
  return key.startsWith('card ') && card !== undefined && hasHappened(card.kind);
};

/** What must be done so that the rig is as `record` has it, but for what happened to either. [RS1] [RS2] */
export function restoreTasks(now: Rig, record: Rig): Tasks {
  const { units, rig } = tasksOf(now, record);
  return { units, rig: rig.filter((task) => !isHappening(task)) };
}

/**
 * The same for one record, asked again and again: while only what happened changes, as with every tick, the tasks of before are the answer.
 * A large rig takes long to compare.
 */
export function followRestoreTasks(record: Rig): (now: Rig) => Tasks {
  let last: { readonly now: Rig; readonly tasks: Tasks } | undefined;
  return (now) => {
    const tasks = last !== undefined && differsInHappenings(last.now, now) ? last.tasks : restoreTasks(now, record);
    last = { now, tasks };
    return tasks;
  };
}

const PARTS = ['fixtures', 'modes', 'positions', 'universes', 'notes', 'wanted', 'signatures'] as const;

/** Whether two rigs are the same but for what happened: told from shared parts, so that it may be missed, but is never wrongly said. */
const differsInHappenings = (a: Rig, b: Rig): boolean =>
  PARTS.every((part) => a[part] === b[part]) &&
  differingRows(a.cards, b.cards).every(({ before, after }) =>
    [before, after].every((card) => card === undefined || hasHappened(card.kind)),
  );

/**
 * What must be put back, and what is ticked of it. `hash` names the record: ticks of another one do not count. `tasks`: those of
 * `restoreTasks`, where they are known. [RS3] [RS4]
 */
export function restoreSheet(
  now: Rig,
  record: Rig,
  hash: string,
  { units, rig }: Tasks = restoreTasks(now, record),
): RestoreSheet {
  const { ticks } = recordOf(now.cards);
  const ticked = (task: UnitTask | RigTask): Ticked => {
    const key = lineKey(hash, task.key);
    const tick = ticks.get(key);
    return { key, tick, state: tick?.state ?? 'open' };
  };
  const unitLines = units.map((task): UnitLine => ({ at: 'unit', task, ...ticked(task) }));
  const rigLines = rig.map((task): RigLine => ({ at: 'rig', task, ...ticked(task) }));
  const known = new Set([...unitLines, ...rigLines].map(({ key }) => key));
  const own = [...ticks.values()].filter(({ key }) => key.startsWith(`${hash} `));
  return {
    places: placesOf(unitLines.filter(({ task }) => task.kind !== 'paper')),
    rig: rigLines.filter(({ task }) => task.kind !== 'record'),
    paper: [
      ...unitLines.filter(({ task }) => task.kind === 'paper'),
      ...rigLines.filter(({ task }) => task.kind === 'record'),
    ],
    loose: own.flatMap((tick) => (known.has(tick.key) ? [] : [{ task: tick.key.slice(hash.length + 1), tick }])),
    elsewhere: ticks.size - own.length,
  };
}

/** The key of the tick of a task. A name near its greatest length is cut, for no key of a card is longer. */
export const lineKey = (hash: string, task: string): string =>
  tickKey(hash, task)
    .slice(0, CARD_KEY_LIMIT)
    .replace(/[\uD800-\uDBFF]$/, '')
    .trim();

function placesOf(lines: readonly UnitLine[]): readonly RestorePlace[] {
  return [...groupBy(lines, ({ task }) => positionId(task.position))].map(([id, own]) => ({
    id,
    position: own[0]?.task.position ?? '',
    units: [...groupBy(own, ({ task }) => idOf(task))].map(([unit, those]) => ({ id: unit, lines: those })),
  }));
}

/** The unit of a task: it is there before, after, or both. */
const idOf = ({ key, kind }: UnitTask): FixtureId => key.slice(0, -kind.length - 1) as FixtureId;

export const placeLines = ({ units }: RestorePlace): readonly UnitLine[] => units.flatMap(({ lines }) => lines);

/** The lines that somebody goes somewhere for, in the order of the sheet. */
export const bodilyLines = ({ places, rig }: RestoreSheet): readonly RestoreLine[] => [
  ...places.flatMap(placeLines),
  ...rig,
];

export const allLines = (sheet: RestoreSheet): readonly RestoreLine[] => [...bodilyLines(sheet), ...sheet.paper];

/** How many lines stand where. */
export function countStates(lines: readonly Ticked[]): Readonly<Record<LineState, number>> {
  const counts = { open: 0, done: 0, stays: 0 };
  for (const { state } of lines) counts[state] += 1;
  return counts;
}
