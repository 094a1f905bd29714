'use client';

import { useQuery } from '@tanstack/react-query';
import { useParams } from 'next/navigation';
import { AUDIT_WORDS } from '#words/audit.ts';
import { KIT_WORDS } from '#words/screens.ts';
import { useTRPC } from '../../kit/data/trpc.tsx';
import { PageFrame } from '../../kit/page-frame.tsx';
import { TextLink } from '../../kit/text-link.tsx';
import { Banner } from '../banner.tsx';
import { SignedIn } from '../signed-in.tsx';
import { Audit } from './audit.tsx';

/** What was done with a crew's people, rigs and data. */
export function AuditPage() {
  const { crew } = useParams<{ crew: string }>();
  const trpc = useTRPC();
  const found = useQuery(trpc.crews.get.queryOptions({ crewId: crew })).data;
  const about = <TextLink href={`/crews/${crew}`}>{found?.name ?? KIT_WORDS.crew}</TextLink>;
  return (
    <PageFrame
      title={found === undefined ? AUDIT_WORDS.title : AUDIT_WORDS.of(found.name)}
      banner={<Banner name={AUDIT_WORDS.title} about={about} />}
    >
      <SignedIn>{() => <Audit crewId={crew} />}</SignedIn>
    </PageFrame>
  );
}
