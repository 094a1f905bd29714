import { useMutation } from '@tanstack/react-query';
import { useRouter } from 'next/navigation';
import { useId, useState } from 'react';
import type { CrewSummary } from '#wire/crews.ts';
import type { HandoverLook } from '#wire/handovers.ts';
import { RECEIVE_WORDS as words } from '#words/handovers.ts';
import { Button } from '../../kit/button.tsx';
import { useTRPC } from '../../kit/data/trpc.tsx';
import { saidOf } from '../../kit/data/unreachable.ts';
import { Message } from '../../kit/message.tsx';
import { Select } from '../../kit/select.tsx';
import { TextField } from '../../kit/text-field.tsx';
import { ConfirmDialog } from '../confirm-dialog.tsx';
import { Part } from '../part.tsx';
import { rigPath } from '../rig/rig-address.ts';
import { NewRigFields, useNewRig } from './new-rig-fields.tsx';

export interface AnswerPartProps {
  readonly token: string;
  readonly look: HandoverLook;
  /** Those that may receive it. */
  readonly crews: readonly CrewSummary[];
  readonly crewId: string;
  readonly onCrew: (crewId: string) => void;
  readonly onDeclined: () => void;
}

/** Accepts an offer into a crew, or declines it; with words either way. */
export function AnswerPart({ token, look, crews, crewId, onCrew, onDeclined }: AnswerPartProps) {
  const form = useId();
  const trpc = useTRPC();
  const router = useRouter();
  const [rig, setRig] = useNewRig(look);
  const [said, setSaid] = useState('');
  const [declining, setDeclining] = useState(false);
  const accept = useMutation(
    trpc.handovers.accept.mutationOptions({ onSuccess: ({ id }) => router.push(rigPath(id, 'sheet')) }),
  );
  const decline = useMutation(trpc.handovers.decline.mutationOptions({ onSuccess: onDeclined }));
  const crew = crews.find(({ id }) => id === crewId);
  const choose = (id: string) => {
    onCrew(id);
    setRig({ ...rig, venueId: null });
  };
  return (
    <Part title={words.answer} about={words.until(look.expiresAt)}>
      <form
        id={form}
        className="flex max-w-prose flex-col gap-4 py-3"
        onSubmit={(event) => {
          event.preventDefault();
          if (crew !== undefined) accept.mutate({ ...rig, token, crewId, words: said });
        }}
      >
        {crew === undefined ? (
          <Message severity="caution" said={{ what: words.noCrew }} />
        ) : (
          <>
            <p>{words.acceptAbout}</p>
            <Select
              label={words.crew}
              choices={crews.map(({ id, name }) => ({ value: id, label: name }))}
              value={crewId}
              onChoose={choose}
            />
            <NewRigFields crewId={crewId} rig={rig} onRig={setRig} />
          </>
        )}
        <TextField label={words.words} hint={words.wordsHint} maxLength={2000} value={said} onText={setSaid} />
        <div className="flex flex-wrap gap-3">
          {crew === undefined ? null : (
            <Button type="submit" look="main" disabled={accept.isPending || rig.name.trim() === ''}>
              {words.accept(crew.name)}
            </Button>
          )}
          <Button onClick={() => setDeclining(true)}>{words.decline}</Button>
        </div>
        {accept.error === null ? null : <Message severity="blocker" said={saidOf(accept.error)} />}
      </form>
      {declining ? (
        <ConfirmDialog
          title={words.declineTitle}
          about={words.declineAbout}
          submit={words.decline}
          busy={decline.isPending}
          refused={decline.error === null ? undefined : saidOf(decline.error)}
          onConfirm={() => decline.mutate({ token, words: said, crewId: crew?.id ?? null })}
          onClose={() => setDeclining(false)}
        />
      ) : null}
    </Part>
  );
}
