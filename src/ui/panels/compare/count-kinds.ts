import { groupBy } from '#base/group-by.ts';
import { RIG_TASKS, type Tasks, UNIT_TASKS } from '#engine/diff/tasks.ts';
import type { TaskKind } from './kind-choice.tsx';

/** How many tasks there are of each kind that occurs, in the order in which they are done. */
export function countKinds({ units, rig }: Tasks): ReadonlyMap<TaskKind, number> {
  const groups = groupBy([...units, ...rig], ({ kind }): TaskKind => kind);
  return new Map(
    [...UNIT_TASKS, ...RIG_TASKS].flatMap((kind) => {
      const group = groups.get(kind);
      return group === undefined ? [] : [[kind, group.length] as const];
    }),
  );
}
