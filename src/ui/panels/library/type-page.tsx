'use client';

import { useParams } from 'next/navigation';
import type { CrewDetail } from '#wire/crews.ts';
import type { TypeDetails } from '#wire/library.ts';
import { LIBRARY_WORDS, TYPE_WORDS } from '#words/library.ts';
import { PageFrame } from '../../kit/page-frame.tsx';
import { TextLink } from '../../kit/text-link.tsx';
import { Banner } from '../banner.tsx';
import { Part } from '../part.tsx';
import { SignedIn } from '../signed-in.tsx';
import { Asked } from './asked.tsx';
import { ComparePart } from './compare-part.tsx';
import { DraftsPart } from './drafts-part.tsx';
import { HazardsPart } from './hazards-part.tsx';
import { libraryPath } from './library-address.ts';
import { ModesPart } from './modes-part.tsx';
import { ReportLists } from './report-lists.tsx';
import { RevisionsPart } from './revisions-part.tsx';
import { TypeActions } from './type-actions.tsx';
import { TypeFacts } from './type-facts.tsx';
import { useCrew, useType } from './use-library.ts';
import { UsesPart } from './uses-part.tsx';

/** One fixture type of a crew's library: what its newest revision says, and its history. */
export function TypePage() {
  const { crew, type } = useParams<{ crew: string; type: string }>();
  const found = useType({ crewId: crew, typeId: type }).value?.summary;
  const name = found === undefined ? TYPE_WORDS.loading : `${found.maker} ${found.model}`;
  const about = (
    <span className="flex flex-wrap gap-x-4">
      {found === undefined ? null : <span>{TYPE_WORDS.of(found)}</span>}
      <TextLink href={libraryPath(crew)}>{TYPE_WORDS.library}</TextLink>
    </span>
  );
  return (
    <PageFrame title={name} banner={<Banner name={name} about={about} />}>
      <SignedIn>{() => <Found crewId={crew} typeId={type} />}</SignedIn>
    </PageFrame>
  );
}

function Found({ crewId, typeId }: { readonly crewId: string; readonly typeId: string }) {
  const details = useType({ crewId, typeId });
  const crew = useCrew(crewId);
  return (
    <Asked answer={crew}>
      {(mine) => <Asked answer={details}>{(found) => <TypeParts crew={mine} details={found} />}</Asked>}
    </Asked>
  );
}

function TypeParts({ crew, details }: { readonly crew: CrewDetail; readonly details: TypeDetails }) {
  const { newest, summary } = details;
  const address = { crewId: crew.id, typeId: summary.id };
  return (
    <div className="flex flex-col gap-8">
      <div className="flex flex-col gap-3">
        {newest.type.description === '' ? null : (
          <p className="max-w-prose whitespace-pre-line">{newest.type.description}</p>
        )}
        {crew.role === 'reader' ? <p className="text-soft">{LIBRARY_WORDS.reader}</p> : null}
        <TypeActions crew={crew} details={details} />
      </div>
      <HazardsPart hazards={newest.type.hazards} />
      <ModesPart type={newest.type} />
      <TypeFacts type={newest.type} />
      <UsesPart {...address} />
      <DraftsPart crewId={crew.id} drafts={details.drafts} />
      <RevisionsPart {...address} revisions={details.revisions} />
      {details.revisions.length > 1 ? <ComparePart {...address} revisions={details.revisions} /> : null}
      {newest.report === null ? null : (
        <Part title={TYPE_WORDS.fileReport}>
          <div className="py-2">
            <ReportLists report={newest.report} />
          </div>
        </Part>
      )}
    </div>
  );
}
