import { useMutation } from '@tanstack/react-query';
import { useState } from 'react';
import type { CrewDetail } from '#wire/crews.ts';
import { INVITE_WORDS } from '#words/crew.ts';
import { ROLE_WORDS, sayDay } from '#words/screens.ts';
import { Button } from '../../kit/button.tsx';
import { useTRPC } from '../../kit/data/trpc.tsx';
import { saidOf } from '../../kit/data/unreachable.ts';
import { LinkButton } from '../../kit/link-button.tsx';
import { Message } from '../../kit/message.tsx';
import { Part } from '../part.tsx';
import { InviteDialog } from './invite-dialog.tsx';

/** The links that are still open, and the way to make one; for leads. */
export function Invitations({ crew }: { readonly crew: CrewDetail }) {
  const trpc = useTRPC();
  const [asking, setAsking] = useState(false);
  const revoke = useMutation(trpc.invitations.revoke.mutationOptions());
  return (
    <Part
      title={INVITE_WORDS.title}
      about={INVITE_WORDS.about}
      actions={<Button onClick={() => setAsking(true)}>{INVITE_WORDS.make}</Button>}
    >
      {crew.invitations.length === 0 ? <p className="py-2 text-soft">{INVITE_WORDS.none}</p> : null}
      <ul>
        {crew.invitations.map((invitation) => {
          const text = INVITE_WORDS.open(
            ROLE_WORDS[invitation.role].name,
            invitation.createdByName,
            sayDay(invitation.expiresAt),
          );
          return (
            <li key={invitation.id} className="flex min-h-row flex-wrap items-center gap-x-4 border-b border-rule px-2">
              <span>{text}</span>
              <LinkButton
                className="ml-auto"
                aria-label={`${INVITE_WORDS.revoke}: ${text}`}
                disabled={revoke.isPending}
                onClick={() => revoke.mutate({ crewId: crew.id, invitationId: invitation.id })}
              >
                {INVITE_WORDS.revoke}
              </LinkButton>
            </li>
          );
        })}
      </ul>
      {revoke.error ? <Message severity="blocker" said={saidOf(revoke.error)} /> : null}
      {asking ? <InviteDialog crewId={crew.id} onClose={() => setAsking(false)} /> : null}
    </Part>
  );
}
