import { useState } from 'react';
import type { Tasks } from '#engine/diff/tasks.ts';
import { MOMENT_WORDS as words } from '#words/history.ts';
import { RIG_TASK_TITLES, rigTaskSentence, taskUnit, unitTaskSentence } from '#words/tasks.ts';
import { LinkButton } from '../../kit/link-button.tsx';

const STEP = 50;

export interface TaskLinesProps {
  readonly tasks: Tasks;
  /** Lines that are shown before one asks for more. */
  readonly first?: number;
}

/** What is to be done, line by line: at units in the order of their places, then what is of the whole rig. */
export function TaskLines({ tasks, first = STEP }: TaskLinesProps) {
  const [most, setMost] = useState(first);
  const lines = [
    ...tasks.units.map((task) => ({ key: task.key, of: taskUnit(task), text: unitTaskSentence(task) })),
    ...tasks.rig.map((task) => ({ key: task.key, of: RIG_TASK_TITLES[task.kind], text: rigTaskSentence(task) })),
  ];
  return (
    <>
      <ul>
        {lines.slice(0, most).map(({ key, of, text }) => (
          <li key={key} className="flex flex-wrap gap-x-4 border-b border-rule py-1">
            <span className="w-48 shrink-0 font-medium max-sm:w-full">{of}</span>
            <span className="min-w-0 flex-1 [overflow-wrap:anywhere]">{text}</span>
          </li>
        ))}
      </ul>
      {lines.length > most ? (
        <LinkButton onClick={() => setMost(most + STEP * 4)}>
          {words.more(Math.min(STEP * 4, lines.length - most))}
        </LinkButton>
      ) : null}
    </>
  );
}
