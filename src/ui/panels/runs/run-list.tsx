import { type KeyboardEvent, useId } from 'react';
import type { Severity } from '#engine/model/finding.ts';
import { MOST_LOADS } from '#engine/network/runs/measured-run.ts';
import type { RunLine } from '#engine/network/runs/run-list.ts';
import { sourceWords } from '#words/run-names.ts';
import { RUNS_WORDS as words } from '#words/runs.ts';
import { Mark } from '../../kit/mark.tsx';
import { lineOfKey } from '../universes/line-of-key.ts';

interface RunChoice {
  readonly run: RunLine;
  /** The gravest of what is found of it. */
  readonly worst: Severity | undefined;
}

export interface RunListProps {
  readonly choices: readonly RunChoice[];
  readonly at: number;
  readonly onChoose: (key: string) => void;
}

/** The runs beside the one that is shown: arrows choose. */
export function RunList({ choices, at, onChoose }: RunListProps) {
  const id = useId();
  const press = (event: KeyboardEvent) => {
    const line = lineOfKey(event.key, { at, count: choices.length, page: 8 });
    const choice = line === undefined ? undefined : choices[line];
    if (choice === undefined) return;
    event.preventDefault();
    onChoose(choice.run.key);
    document.getElementById(`${id}-${line}`)?.scrollIntoView({ block: 'nearest' });
  };
  return (
    <div
      role="listbox"
      tabIndex={0}
      aria-label={words.list}
      aria-activedescendant={choices.length === 0 ? undefined : `${id}-${at}`}
      className="group min-h-0 flex-1 overflow-y-auto border-t border-rule-strong outline-none"
      onKeyDown={press}
    >
      {choices.map((choice, index) => (
        // Its keys are those of the list it is in.
        <div
          key={choice.run.key}
          id={`${id}-${index}`}
          role="option"
          tabIndex={-1}
          aria-selected={index === at}
          className="border-b border-rule py-1 pr-3 pl-5 hover:bg-hover aria-selected:bg-selected group-focus-visible:aria-selected:outline-2 group-focus-visible:aria-selected:-outline-offset-2"
          onPointerDown={() => onChoose(choice.run.key)}
        >
          <ChoiceText {...choice} />
        </div>
      ))}
    </div>
  );
}

function ChoiceText({ run, worst }: RunChoice) {
  const { name, from, carried, units, line, reach } = run;
  const end = words.ends[run.run?.end ?? 'unsaid'];
  return (
    <>
      <div className="flex items-baseline gap-2">
        <span className="min-w-0 flex-1 truncate font-serif text-name leading-5 font-semibold">{name}</span>
        {worst === undefined ? null : <Mark severity={worst} />}
      </div>
      <div className="truncate">
        {words.carries(carried)} · {sourceWords(from)}
      </div>
      <div className="text-small text-soft">
        {words.units(units)} · {words.loads(line.loads, MOST_LOADS)} · {words.length(line, reach)} · {end}
      </div>
    </>
  );
}
