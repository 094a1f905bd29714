import { type KeyboardEvent, useMemo, useState } from 'react';
import type { HistoryFilter, HistoryStep } from '#wire/history.ts';
import type { RigSummary } from '#wire/rigs.ts';
import { HISTORY_WORDS as words } from '#words/history.ts';
import { sayDay, sayTime } from '#words/screens.ts';
import type { RigStore } from '../../live/rig-store.ts';
import { lineOfKey } from '../universes/line-of-key.ts';
import { groupSteps, type Stretch } from './group-steps.ts';
import { StepLine } from './step-line.tsx';

export interface StepListProps {
  readonly store: RigStore;
  readonly rig: RigSummary;
  readonly filter: HistoryFilter;
  readonly steps: readonly HistoryStep[];
  readonly writable: boolean;
  readonly onMoment: (seq: number) => void;
  readonly onSaid: (text: string) => void;
}

/** Steps by day and by person: arrows go from line to line, wherever they are grouped. */
export function StepList(props: StepListProps) {
  const { steps } = props;
  const days = useMemo(() => groupSteps(steps, sayDay), [steps]);
  const [at, setAt] = useState<number>();
  const current = steps.some(({ seq }) => seq === at) ? at : steps[0]?.seq;
  const press = (event: KeyboardEvent<HTMLElement>) => {
    if (!(event.target as HTMLElement).hasAttribute('data-step')) return;
    const here = steps.findIndex(({ seq }) => seq === current);
    const line = lineOfKey(event.key, { at: here, count: steps.length, page: 10 });
    const step = line === undefined ? undefined : steps[line];
    if (step === undefined) return;
    event.preventDefault();
    event.currentTarget.querySelector<HTMLElement>(`[data-step="${step.seq}"]`)?.focus();
  };
  return (
    <section aria-label={words.timeline} className="flex flex-col gap-5" onKeyDown={press}>
      <p className="text-small text-soft touch:hidden max-sm:hidden">{words.keys}</p>
      {days.map(({ day, stretches }) => (
        <section key={day} aria-label={day}>
          <h2 className="border-b border-ink pb-1 text-name">{day}</h2>
          {stretches.map((stretch) => (
            <StretchPart key={stretch.steps.at(-1)?.seq} {...props} stretch={stretch} current={current} onAt={setAt} />
          ))}
        </section>
      ))}
    </section>
  );
}

interface StretchPartProps extends StepListProps {
  readonly stretch: Stretch;
  readonly current: number | undefined;
  readonly onAt: (seq: number) => void;
}

function StretchPart({ stretch, current, onAt, steps: _all, ...rest }: StretchPartProps) {
  return (
    <div className="pt-2">
      <div className="flex flex-wrap items-baseline gap-x-3">
        <h3 className="text-large font-semibold">{stretch.byName ?? words.somebody}</h3>
        <span className="text-small text-soft">{words.between(sayTime(stretch.from), sayTime(stretch.to))}</span>
      </div>
      <ol>
        {stretch.steps.map((step) => (
          <StepLine key={step.seq} {...rest} step={step} isCurrent={step.seq === current} onAt={onAt} />
        ))}
      </ol>
    </div>
  );
}
