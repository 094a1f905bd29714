import { useMutation } from '@tanstack/react-query';
import { useState } from 'react';
import type { CrewDetail } from '#wire/crews.ts';
import { CREW_WORDS } from '#words/crew.ts';
import { Button } from '../../kit/button.tsx';
import { useTRPC } from '../../kit/data/trpc.tsx';
import { saidOf } from '../../kit/data/unreachable.ts';
import { AskNameDialog } from '../ask-name-dialog.tsx';
import { ConfirmDialog } from '../confirm-dialog.tsx';

/** What one does with the crew as a whole: rename it, leave it. */
export function CrewActions({ crew }: { readonly crew: CrewDetail }) {
  const trpc = useTRPC();
  const [asking, setAsking] = useState<'rename' | 'leave'>();
  const close = () => setAsking(undefined);
  const rename = useMutation(trpc.crews.rename.mutationOptions({ onSuccess: close }));
  const leave = useMutation(trpc.crews.leave.mutationOptions({ onSuccess: () => window.location.assign('/') }));
  return (
    <div className="flex flex-wrap gap-3">
      {crew.role === 'lead' ? <Button onClick={() => setAsking('rename')}>{CREW_WORDS.renameTitle}</Button> : null}
      <Button look="danger" onClick={() => setAsking('leave')}>
        {CREW_WORDS.leave}
      </Button>
      {asking === 'rename' ? (
        <AskNameDialog
          title={CREW_WORDS.renameTitle}
          label={CREW_WORDS.renameLabel}
          submit={CREW_WORDS.renameSubmit}
          initial={crew.name}
          busy={rename.isPending}
          refused={rename.error ? saidOf(rename.error) : undefined}
          onName={(name) => rename.mutate({ crewId: crew.id, name })}
          onClose={close}
        />
      ) : null}
      {asking === 'leave' ? (
        <ConfirmDialog
          title={CREW_WORDS.leaveTitle(crew.name)}
          about={CREW_WORDS.leaveAbout}
          submit={CREW_WORDS.leaveSubmit}
          busy={leave.isPending}
          refused={leave.error ? saidOf(leave.error) : undefined}
          onConfirm={() => leave.mutate({ crewId: crew.id })}
          onClose={close}
        />
      ) : null}
    </div>
  );
}
