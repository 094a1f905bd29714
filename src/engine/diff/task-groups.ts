import { groupBy } from '#base/group-by.ts';
import type { Fixture } from '../model/fixture.ts';
import { type PositionId, positionId } from '../model/ids.ts';
import type { RigTask, RigTaskKind, Tasks, UnitTask } from './tasks.ts';

/** What is to be done at one unit, in the order in which one does it there. */
export interface UnitGroup {
  readonly id: string;
  /** As it will be; as it was when it is taken down. */
  readonly unit: Fixture;
  readonly tasks: readonly UnitTask[];
}

/** What is to be done at one position. */
export interface PlaceGroup {
  readonly id: PositionId;
  readonly position: string;
  readonly units: readonly UnitGroup[];
}

/** What is to be done for the whole rig, of one kind. */
interface RigGroup {
  readonly kind: RigTaskKind;
  readonly tasks: readonly RigTask[];
}

export interface GroupedTasks {
  readonly places: readonly PlaceGroup[];
  readonly rig: readonly RigGroup[];
}

/** Tasks as somebody goes through them: position by position and unit by unit along it, then those of the whole rig. [DF7] */
export function groupTasks({ units, rig }: Pick<Tasks, 'units' | 'rig'>): GroupedTasks {
  const places = [...groupBy(units, ({ position }) => positionId(position))].map(([id, tasks]) => ({
    id,
    position: tasks[0]?.position ?? '',
    units: unitGroups(tasks),
  }));
  return { places, rig: [...groupBy(rig, ({ kind }) => kind)].map(([kind, tasks]) => ({ kind, tasks })) };
}

function unitGroups(tasks: readonly UnitTask[]): readonly UnitGroup[] {
  return [...groupBy(tasks, (task) => unitOfTask(task)?.id)].flatMap(([id, own]) => {
    const unit = own[0] === undefined ? undefined : unitOfTask(own[0]);
    return id === undefined || unit === undefined ? [] : [{ id, unit, tasks: own }];
  });
}

/** The unit of a task as it will be; as it was when it is taken down. */
export const unitOfTask = ({ before, after }: UnitTask): Fixture | undefined => after ?? before;
