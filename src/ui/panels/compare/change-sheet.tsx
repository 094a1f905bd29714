import { type ReactNode, useMemo } from 'react';
import { groupTasks, type PlaceGroup, type UnitGroup } from '#engine/diff/task-groups.ts';
import type { RigTask, Tasks, UnitTask } from '#engine/diff/tasks.ts';
import type { Rig } from '#engine/model/rig.ts';
import { taskCautions } from '#engine/sheet/task-sheet.ts';
import { placeCount, unitAbout, unitNumber, COMPARE_RIGS_WORDS as words } from '#words/compare.ts';
import { TASK_STANDING } from '#words/task-cells.ts';
import { RIG_TASK_TITLES, rigTaskSentence, unitTaskSentence } from '#words/tasks.ts';
import { Cautions } from '../../plant/cautions.tsx';
import { ShowMore, useShown } from '../../print/show-more.tsx';
import { Part } from '../part.tsx';
import { firstUnits } from './first-units.ts';

export interface ChangeSheetProps {
  readonly tasks: Tasks;
  /** The rig that it will be: names the types to be careful with. */
  readonly after: Rig;
  /** What stands before each line; a box to tick by hand when left out. */
  readonly mark?: (task: UnitTask | RigTask) => ReactNode;
}

const box = () => <span aria-hidden="true">☐</span>;

/** What somebody has to do, position by position and along it, then what is at no unit; what to mind comes first. */
export function ChangeSheet({ tasks, after, mark = box }: ChangeSheetProps) {
  const { places, rig } = useMemo(() => groupTasks(tasks), [tasks]);
  const cautions = useMemo(() => taskCautions(tasks, after, TASK_STANDING), [tasks, after]);
  const all = places.reduce((sum, { units }) => sum + units.length, 0);
  const { shown, onMore } = useShown(all);
  return (
    <div className="flex flex-col gap-6">
      <div className="flex flex-col gap-1">
        <Cautions texts={cautions.flatMap((line) => (line.kind === 'caution' ? [named(line.type, line.text)] : []))} />
      </div>
      {firstUnits(places, shown).map((place) => (
        <PlacePart key={place.id} place={place} mark={mark} />
      ))}
      <ShowMore shown={shown} all={all} onMore={onMore} />
      {rig.map((group) => (
        <Part key={group.kind} title={RIG_TASK_TITLES[group.kind]}>
          <ul>
            {group.tasks.map((task) => (
              <Line key={task.key} mark={mark(task)} said={rigTaskSentence(task)} />
            ))}
          </ul>
        </Part>
      ))}
    </div>
  );
}

const named = (type: string, text: string) => (type === '' ? text : `${type}: ${text}`);

interface PlacePartProps {
  readonly place: PlaceGroup;
  readonly mark: (task: UnitTask) => ReactNode;
}

function PlacePart({ place, mark }: PlacePartProps) {
  const things = place.units.reduce((sum, { tasks }) => sum + tasks.length, 0);
  const title = place.position.trim() === '' ? words.noPosition : place.position;
  return (
    <Part title={title} about={placeCount(things, place.units.length)}>
      <ul>
        {place.units.map((unit) => (
          <UnitLines key={unit.id} group={unit} mark={mark} />
        ))}
      </ul>
    </Part>
  );
}

interface UnitLinesProps {
  readonly group: UnitGroup;
  readonly mark: (task: UnitTask) => ReactNode;
}

function UnitLines({ group: { unit, tasks }, mark }: UnitLinesProps) {
  return (
    <li className="grid break-inside-avoid grid-cols-[minmax(6rem,1fr)_minmax(0,4fr)] gap-x-4 border-b border-rule py-1.5 max-sm:grid-cols-1">
      <div className="[overflow-wrap:anywhere]">
        <span className="text-large font-semibold tabular-nums">{unitNumber(unit)}</span>{' '}
        <span className="text-soft">{unitAbout(unit)}</span>
      </div>
      <ul>
        {tasks.map((task) => (
          <Line key={task.key} mark={mark(task)} said={unitTaskSentence(task)} />
        ))}
      </ul>
    </li>
  );
}

function Line({ mark, said }: { readonly mark: ReactNode; readonly said: string }) {
  return (
    <li className="flex min-h-row items-baseline gap-2 py-0.5 text-large [overflow-wrap:anywhere]">
      {mark}
      <span className="min-w-0">{said}</span>
    </li>
  );
}
