import { useInfiniteQuery } from '@tanstack/react-query';
import { useState } from 'react';
import type { ToldChange } from '#wire/history.ts';
import { changeSentence, HISTORY_WORDS as words } from '#words/history.ts';
import { KIT_WORDS } from '#words/screens.ts';
import { useTRPC } from '../../kit/data/trpc.tsx';
import { saidOf } from '../../kit/data/unreachable.ts';
import { LinkButton } from '../../kit/link-button.tsx';
import { Message } from '../../kit/message.tsx';
import { PutBack } from './put-back.tsx';
import type { StepLineProps } from './step-line.tsx';

type StepChangesProps = Pick<StepLineProps, 'store' | 'rig' | 'filter' | 'step' | 'writable' | 'onSaid'>;

/** The changes of a step one by one: the first few are there, all of them when asked for. */
export function StepChanges(props: StepChangesProps) {
  const { step } = props;
  const [all, setAll] = useState(false);
  // The line itself says the only change there is.
  if (step.total === 1) return null;
  if (all) return <AllChanges {...props} />;
  return (
    <>
      <ChangeList {...props} changes={step.changes} />
      {step.total > step.changes.length ? (
        <div>
          <LinkButton onClick={() => setAll(true)}>{words.allChanges(step.total)}</LinkButton>
        </div>
      ) : null}
    </>
  );
}

function AllChanges(props: StepChangesProps) {
  const { rig, filter, step } = props;
  const asked = useInfiniteQuery(
    useTRPC().history.changes.infiniteQueryOptions(
      { rigId: rig.id, filter, seq: step.seq },
      { getNextPageParam: ({ next }) => next, initialCursor: null, staleTime: Number.POSITIVE_INFINITY },
    ),
  );
  if (asked.error !== null) return <Message severity="blocker" said={saidOf(asked.error)} />;
  if (asked.data === undefined) return <p className="text-soft">{KIT_WORDS.loading}</p>;
  return (
    <>
      <ChangeList {...props} changes={asked.data.pages.flatMap(({ changes }) => changes)} />
      {asked.hasNextPage ? (
        <div>
          <LinkButton onClick={() => void asked.fetchNextPage()}>{words.moreChanges}</LinkButton>
        </div>
      ) : null}
    </>
  );
}

interface ChangeListProps extends StepChangesProps {
  readonly changes: readonly ToldChange[];
}

function ChangeList({ changes, ...rest }: ChangeListProps) {
  return (
    <ul>
      {changes.map((told) => (
        <li key={told.nth} className="flex flex-wrap items-baseline gap-x-4">
          <span className="min-w-0 [overflow-wrap:anywhere]">{changeSentence(told)}</span>
          <PutBack {...rest} told={told} />
        </li>
      ))}
    </ul>
  );
}
