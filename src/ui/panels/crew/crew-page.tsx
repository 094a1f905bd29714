'use client';

import { useQuery } from '@tanstack/react-query';
import { useParams } from 'next/navigation';
import type { Me } from '#wire/me.ts';
import { FRONT_WORDS } from '#words/front.ts';
import { KIT_WORDS, ROLE_WORDS } from '#words/screens.ts';
import { useTRPC } from '../../kit/data/trpc.tsx';
import { saidOf } from '../../kit/data/unreachable.ts';
import { Message } from '../../kit/message.tsx';
import { PageFrame } from '../../kit/page-frame.tsx';
import { Banner } from '../banner.tsx';
import { CrewHandovers } from '../handover/crew-handovers.tsx';
import { SignedIn } from '../signed-in.tsx';
import { CrewActions } from './crew-actions.tsx';
import { CrewData } from './crew-data.tsx';
import { CrewRigs } from './crew-rigs.tsx';
import { CrewTypes } from './crew-types.tsx';
import { CrewVenues } from './crew-venues.tsx';
import { Invitations } from './invitations.tsx';
import { Members } from './members.tsx';
import { RemovedRigs } from './removed-rigs.tsx';

/** A crew: who is in it, who is invited, its venues and rigs. */
export function CrewPage() {
  const { crew } = useParams<{ crew: string }>();
  const trpc = useTRPC();
  const found = useQuery(trpc.crews.get.queryOptions({ crewId: crew })).data;
  const name = found?.name ?? KIT_WORDS.crew;
  const about = found ? FRONT_WORDS.crewAbout(ROLE_WORDS[found.role].name, found.members.length) : undefined;
  return (
    <PageFrame title={name} banner={<Banner name={name} about={about} />}>
      <SignedIn>{(user) => <CrewParts crewId={crew} user={user} />}</SignedIn>
    </PageFrame>
  );
}

interface CrewPartsProps {
  readonly crewId: string;
  readonly user: NonNullable<Me['user']>;
}

function CrewParts({ crewId, user }: CrewPartsProps) {
  const trpc = useTRPC();
  const crew = useQuery(trpc.crews.get.queryOptions({ crewId }));
  if (crew.data === undefined) {
    return crew.error ? (
      <Message severity="blocker" said={saidOf(crew.error)} />
    ) : (
      <p className="text-soft">{KIT_WORDS.loading}</p>
    );
  }
  return (
    <div className="flex flex-col gap-8">
      <Members crew={crew.data} me={user.id} />
      {crew.data.role === 'lead' ? <Invitations crew={crew.data} /> : null}
      <CrewVenues crew={crew.data} />
      <CrewRigs crew={crew.data} />
      <CrewHandovers crew={crew.data} />
      <RemovedRigs crew={crew.data} />
      <CrewTypes crewId={crewId} />
      {crew.data.role === 'lead' ? <CrewData crewId={crewId} /> : null}
      <CrewActions crew={crew.data} />
    </div>
  );
}
