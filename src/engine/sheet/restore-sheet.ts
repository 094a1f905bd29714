import { allLines, bodilyLines, type LineState, type RestoreLine, type RestoreSheet } from '../diff/restore.ts';
import { unitOfTask } from '../diff/task-groups.ts';
import type { RigTask, UnitTask } from '../diff/tasks.ts';
import type { Rig } from '../model/rig.ts';
import { rowsFrom, type Sheet, type SheetCell, type SheetColumn } from './sheet.ts';
import { type TaskStanding, taskCautions } from './task-sheet.ts';

const COLUMNS = [
  'position',
  'unit',
  'channel',
  'task',
  'was',
  'becomes',
  'putBack',
  'tickedBy',
  'tickedAt',
] as const satisfies readonly SheetColumn[];

/** How tasks and ticks are said. */
export interface RestoreStanding extends TaskStanding {
  readonly state: (state: LineState) => string;
}

/** A row for each line of a restore sheet, what is on paper only last, and what to mind at the foot. [RS5] */
export function restoreTable(sheet: RestoreSheet, record: Rig, standing: RestoreStanding): Sheet {
  const rows = rowsFrom(allLines(sheet), (line) => cellsOfLine(line, standing));
  return { kind: 'restore', columns: COLUMNS, ...rows, foot: restoreCautions(sheet, record, standing) };
}

/** What to mind with what somebody goes somewhere for: with weights where something is lifted, with loads where it is plugged. */
export function restoreCautions(sheet: RestoreSheet, record: Rig, standing: TaskStanding) {
  const lines = bodilyLines(sheet);
  const units = lines.flatMap((line): readonly UnitTask[] => (line.at === 'unit' ? [line.task] : []));
  const rig = lines.flatMap((line): readonly RigTask[] => (line.at === 'rig' ? [line.task] : []));
  return taskCautions({ units, rig }, record, standing);
}

function cellsOfLine(line: RestoreLine, standing: RestoreStanding): readonly SheetCell[] {
  const ticked = [standing.state(line.state), line.tick?.by ?? '', line.tick?.at ?? ''];
  if (line.at === 'rig') {
    const { what, before, after } = standing.rigTask(line.task);
    return ['', '', null, what, before, after, ...ticked];
  }
  const { what, before, after } = standing.unitTask(line.task);
  const unit = unitOfTask(line.task);
  const name = unit === undefined ? '' : standing.unit(unit);
  return [line.task.position, name, unit?.channel ?? null, what, before, after, ...ticked];
}
