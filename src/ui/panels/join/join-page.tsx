'use client';

import { useMutation, useQuery } from '@tanstack/react-query';
import { useParams, useRouter } from 'next/navigation';
import type { InvitationLook } from '#wire/invitations.ts';
import type { Me } from '#wire/me.ts';
import { SIGN_IN_WORDS, SIGN_UP_WORDS } from '#words/account.ts';
import { JOIN_WORDS } from '#words/crew.ts';
import { ROLE_WORDS } from '#words/screens.ts';
import { Button } from '../../kit/button.tsx';
import { useTRPC } from '../../kit/data/trpc.tsx';
import { saidOf } from '../../kit/data/unreachable.ts';
import { useMe } from '../../kit/data/use-me.ts';
import { Message } from '../../kit/message.tsx';
import { TextLink } from '../../kit/text-link.tsx';
import { AccountPage } from '../account/account-page.tsx';
import { withReturn } from '../account/path-after.ts';

/** What an invitation link leads to, and the way in. The token stays in the address while one signs in. */
export function JoinPage() {
  const { token } = useParams<{ token: string }>();
  const trpc = useTRPC();
  const me = useMe();
  const look = useQuery(trpc.invitations.look.queryOptions({ token }));
  const failed = look.error ?? me.error;
  return (
    <AccountPage title={JOIN_WORDS.title}>
      {failed ? <Message severity="blocker" said={saidOf(failed)} /> : null}
      {!failed && (look.data === undefined || me.value === undefined) ? (
        <p className="text-soft">{JOIN_WORDS.looking}</p>
      ) : null}
      {look.data && me.value ? <Offer token={token} look={look.data} user={me.value.user} /> : null}
    </AccountPage>
  );
}

interface OfferProps {
  readonly token: string;
  readonly look: InvitationLook;
  readonly user: Me['user'];
}

function Offer({ token, look, user }: OfferProps) {
  if (look.state !== 'open') return <Message severity="blocker" said={JOIN_WORDS.ended[look.state]} />;
  if (look.member) {
    return (
      <p>
        {JOIN_WORDS.member(look.crewName)} <TextLink href="/">{JOIN_WORDS.toRigs}</TextLink>
      </p>
    );
  }
  const role = ROLE_WORDS[look.role];
  return (
    <>
      <p className="font-serif text-name">{JOIN_WORDS.offer(look.crewName, role.name)}</p>
      <p>{JOIN_WORDS.means(role.may)}</p>
      {user === null ? (
        <>
          <p>{JOIN_WORDS.signedOut}</p>
          <p className="flex flex-wrap gap-5">
            <TextLink href={withReturn('/sign-in', `/join/${token}`)}>{SIGN_IN_WORDS.title}</TextLink>
            <TextLink href={withReturn('/sign-up', `/join/${token}`)}>{SIGN_UP_WORDS.title}</TextLink>
          </p>
        </>
      ) : (
        <Accept token={token} crewName={look.crewName} user={user} />
      )}
    </>
  );
}

interface AcceptProps {
  readonly token: string;
  readonly crewName: string;
  readonly user: NonNullable<Me['user']>;
}

function Accept({ token, crewName, user }: AcceptProps) {
  const trpc = useTRPC();
  const router = useRouter();
  const accept = useMutation(
    trpc.invitations.accept.mutationOptions({ onSuccess: ({ crewId }) => router.push(`/crews/${crewId}`) }),
  );
  return (
    <>
      <p>{JOIN_WORDS.as(user.name, user.email)}</p>
      <div>
        <Button look="main" disabled={accept.isPending} onClick={() => accept.mutate({ token })}>
          {JOIN_WORDS.accept(crewName)}
        </Button>
      </div>
      {accept.error ? <Message severity="blocker" said={saidOf(accept.error)} /> : null}
    </>
  );
}
