import { groupTasks, unitOfTask } from '../diff/task-groups.ts';
import type { RigTask, RigTaskKind, Tasks, UnitTask, UnitTaskKind } from '../diff/tasks.ts';
import type { Fixture } from '../model/fixture.ts';
import type { Rig } from '../model/rig.ts';
import {
  cautionLines,
  type FootLine,
  plainCautions,
  rowsFrom,
  type Sheet,
  type SheetCell,
  type SheetColumn,
  type Standing,
} from './sheet.ts';

const COLUMNS = ['position', 'unit', 'channel', 'task', 'was', 'becomes'] as const satisfies readonly SheetColumn[];

/** A task in words: what is done, what was, and what is to be. */
export interface TaskCells {
  readonly what: string;
  readonly before: string;
  readonly after: string;
}

/** How tasks are said, and what to mind with those who lift and those who plug. */
export interface TaskStanding extends Pick<Standing, 'cautions' | 'cautionFoot'> {
  readonly unit: (unit: Fixture) => string;
  readonly unitTask: (task: UnitTask) => TaskCells;
  readonly rigTask: (task: RigTask) => TaskCells;
  readonly positionCautions: readonly string[];
  readonly circuitCautions: readonly string[];
}

/** A line of a change sheet: one thing that somebody does. */
export type TaskLine =
  | { readonly at: 'unit'; readonly task: UnitTask }
  | { readonly at: 'rig'; readonly task: RigTask };

/** Every task once, in the order of the sheet. */
export function taskLines(tasks: Tasks): readonly TaskLine[] {
  const { places, rig } = groupTasks(tasks);
  return [
    ...places.flatMap(({ units }) =>
      units.flatMap((unit) => unit.tasks.map((task) => ({ at: 'unit', task }) as const)),
    ),
    ...rig.flatMap((group) => group.tasks.map((task) => ({ at: 'rig', task }) as const)),
  ];
}

/** One row for each thing that is to be done: by position and along it, then what is at no unit; cautions at the foot. [DF7] [DF8] */
export function taskSheet(tasks: Tasks, after: Rig, standing: TaskStanding): Sheet {
  const rows = rowsFrom(taskLines(tasks), (line) => cellsOfLine(line, standing));
  return { kind: 'changes', columns: COLUMNS, ...rows, foot: taskCautions(tasks, after, standing) };
}

function cellsOfLine(line: TaskLine, standing: TaskStanding): readonly SheetCell[] {
  if (line.at === 'rig') {
    const { what, before, after } = standing.rigTask(line.task);
    return ['', '', null, what, before, after];
  }
  const { what, before, after } = standing.unitTask(line.task);
  const unit = unitOfTask(line.task);
  return [
    line.task.position,
    unit === undefined ? '' : standing.unit(unit),
    unit?.channel ?? null,
    what,
    before,
    after,
  ];
}

const LIFTS: ReadonlySet<UnitTaskKind | RigTaskKind> = new Set(['take-down', 'hang', 'move', 'swap', 'limits']);
const PLUGS: ReadonlySet<UnitTaskKind | RigTaskKind> = new Set(['hang', 'swap', 'plug', 'feeds']);

/** What to mind with tasks: weights where something is lifted, loads where something is plugged, hazards of the types that come. [DF8] */
export function taskCautions(tasks: Tasks, after: Rig, standing: TaskStanding): readonly FootLine[] {
  const kinds = [...tasks.units, ...tasks.rig].map(({ kind }) => kind);
  const come = tasks.units
    .filter(({ kind }) => kind !== 'take-down' && kind !== 'paper')
    .flatMap((task) => task.after ?? []);
  return [
    ...(kinds.some((kind) => LIFTS.has(kind)) ? plainCautions(standing.positionCautions) : []),
    ...(kinds.some((kind) => PLUGS.has(kind)) ? plainCautions(standing.circuitCautions) : []),
    ...cautionLines(after, come, standing),
  ];
}
