import { useId, useState } from 'react';
import type { HistoryFilter, HistoryStep } from '#wire/history.ts';
import type { RigSummary } from '#wire/rigs.ts';
import { stepSentence, HISTORY_WORDS as words } from '#words/history.ts';
import { sayTime } from '#words/screens.ts';
import { LinkButton } from '../../kit/link-button.tsx';
import type { RigStore } from '../../live/rig-store.ts';
import { PutBack } from './put-back.tsx';
import { StepChanges } from './step-changes.tsx';

export interface StepLineProps {
  readonly store: RigStore;
  readonly rig: RigSummary;
  readonly filter: HistoryFilter;
  readonly step: HistoryStep;
  readonly writable: boolean;
  /** Whether Tab comes to it. */
  readonly isCurrent: boolean;
  readonly onAt: (seq: number) => void;
  readonly onMoment: (seq: number) => void;
  readonly onSaid: (text: string) => void;
}

/** One step in a sentence; opened, its changes one by one, each with the way back, and the rig before and after it. */
export function StepLine(props: StepLineProps) {
  const { step, rig, isCurrent, onAt, onMoment } = props;
  const [open, setOpen] = useState(false);
  const id = useId();
  const only = step.total === 1 ? step.changes[0] : undefined;
  return (
    <li className="border-b border-rule">
      <button
        type="button"
        data-step={step.seq}
        tabIndex={isCurrent ? 0 : -1}
        aria-expanded={open}
        aria-controls={open ? id : undefined}
        className="flex min-h-control w-full items-baseline gap-x-3 rounded-control py-1 text-left hover:bg-hover"
        onFocus={() => onAt(step.seq)}
        onClick={() => setOpen(!open)}
      >
        <span aria-hidden="true" className="w-3 shrink-0 text-soft">
          {open ? '−' : '+'}
        </span>
        <time dateTime={step.at} className="w-11 shrink-0 text-soft tabular-nums">
          {sayTime(step.at)}
        </time>
        <span className="min-w-0 [overflow-wrap:anywhere]">{sentenceOf(step, rig)}</span>
      </button>
      {open ? (
        <div id={id} className="flex flex-col gap-2 pb-3 pl-6 sm:pl-20">
          <StepChanges {...props} />
          <div className="flex flex-wrap gap-x-5">
            {only === undefined ? null : <PutBack {...props} told={only} />}
            {step.seq > 1 ? <LinkButton onClick={() => onMoment(step.seq - 1)}>{words.before}</LinkButton> : null}
            <LinkButton onClick={() => onMoment(step.seq)}>{words.after}</LinkButton>
          </div>
        </div>
      ) : null}
    </li>
  );
}

function sentenceOf(step: HistoryStep, { startedFrom }: RigSummary): string {
  if (step.seq === 1 && startedFrom !== null) return words.began(startedFrom.number, startedFrom.rigName);
  return stepSentence(step);
}
