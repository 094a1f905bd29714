'use client';

import { useParams } from 'next/navigation';
import { LIBRARY_WORDS } from '#words/library.ts';
import { KIT_WORDS } from '#words/screens.ts';
import { PageFrame } from '../../kit/page-frame.tsx';
import { TextLink } from '../../kit/text-link.tsx';
import { Banner } from '../banner.tsx';
import { SignedIn } from '../signed-in.tsx';
import { Asked } from './asked.tsx';
import { BringFiles } from './bring-files.tsx';
import { FindTypes } from './find-types.tsx';
import { NewType } from './new-type.tsx';
import { OpenDrafts } from './open-drafts.tsx';
import { useCrew, useTypes } from './use-library.ts';

/** A crew's fixture library: every type it has, and the ways in. */
export function LibraryPage() {
  const { crew } = useParams<{ crew: string }>();
  const found = useCrew(crew).value;
  const about = (
    <TextLink href={`/crews/${crew}`}>{found === undefined ? KIT_WORDS.crew : LIBRARY_WORDS.of(found.name)}</TextLink>
  );
  return (
    <PageFrame title={LIBRARY_WORDS.title} width="wide" banner={<Banner name={LIBRARY_WORDS.title} about={about} />}>
      <SignedIn>{() => <Library crewId={crew} />}</SignedIn>
    </PageFrame>
  );
}

function Library({ crewId }: { readonly crewId: string }) {
  const crew = useCrew(crewId);
  const types = useTypes(crewId);
  return (
    <Asked answer={crew}>
      {({ role }) => (
        <div className="flex flex-col gap-4">
          {role === 'reader' ? (
            <p className="text-soft">{LIBRARY_WORDS.reader}</p>
          ) : (
            <BringFiles crewId={crewId}>
              <NewType crewId={crewId} />
            </BringFiles>
          )}
          <OpenDrafts crewId={crewId} />
          <Asked answer={types}>{(all) => <FindTypes crewId={crewId} types={all} />}</Asked>
        </div>
      )}
    </Asked>
  );
}
