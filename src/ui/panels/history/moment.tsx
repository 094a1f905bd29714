import { useEffect, useMemo, useRef, useState, useSyncExternalStore } from 'react';
import { tasksOf } from '#engine/diff/tasks.ts';
import { HISTORY_WORDS, stepSentence, MOMENT_WORDS as words } from '#words/history.ts';
import { KIT_WORDS, sayMoment } from '#words/screens.ts';
import { Button } from '../../kit/button.tsx';
import { LinkButton } from '../../kit/link-button.tsx';
import { Message } from '../../kit/message.tsx';
import type { RigStore } from '../../live/rig-store.ts';
import { useCalmRig } from '../../live/use-calm-rig.ts';
import { Part } from '../part.tsx';
import { GoBackDialog } from './go-back-dialog.tsx';
import { MomentUnits } from './moment-units.tsx';
import { TaskLines } from './task-lines.tsx';
import { useMoment, useStepAt } from './use-moment.ts';

export interface MomentProps {
  readonly store: RigStore;
  readonly rigId: string;
  readonly seq: number;
  /** Back to the timeline, with what came of being here. */
  readonly onBack: (said: string) => void;
}

/** A rig as it was, to be looked at only: what differs from now, its units, and the way to make it so again. */
export function Moment({ store, rigId, seq, onBack }: MomentProps) {
  const { rig: then, refused } = useMoment(rigId, seq);
  const step = useStepAt(rigId, seq);
  const now = useCalmRig(store);
  const writable = useSyncExternalStore(store.subscribeLink, store.canEdit);
  const [asking, setAsking] = useState(false);
  const tasks = useMemo(() => (then === undefined ? undefined : tasksOf(now, then)), [now, then]);
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  const differs = tasks !== undefined && tasks.units.length + tasks.rig.length > 0;
  return (
    <>
      <div className="flex flex-wrap items-center gap-x-5 gap-y-2">
        <h2 ref={heading} tabIndex={-1} className="text-title outline-none">
          {step === undefined ? words.titleUnknown : step === null ? words.titleEmpty : words.title(sayMoment(step.at))}
        </h2>
        <LinkButton onClick={() => onBack('')}>{words.back}</LinkButton>
        {differs && writable ? (
          <Button look="main" className="ml-auto max-sm:ml-0" onClick={() => setAsking(true)}>
            {words.goBack}
          </Button>
        ) : null}
      </div>
      <p className="max-w-prose">
        {step === undefined || step === null
          ? words.looking
          : words.after(step.byName ?? HISTORY_WORDS.somebody, stepSentence(step))}
      </p>
      {refused === undefined ? null : <Message severity="blocker" said={refused} />}
      {then === undefined || tasks === undefined ? (
        refused === undefined ? (
          <p className="text-soft">{KIT_WORDS.loading}</p>
        ) : null
      ) : (
        <>
          <Part title={words.differs} about={words.count(tasks.units.length, tasks.rig.length)}>
            {differs ? <TaskLines tasks={tasks} /> : <p className="py-2">{words.same}</p>}
          </Part>
          <MomentUnits rig={then} />
        </>
      )}
      {asking && then !== undefined ? (
        <GoBackDialog store={store} then={then} onClose={() => setAsking(false)} onDone={() => onBack(words.done)} />
      ) : null}
    </>
  );
}
