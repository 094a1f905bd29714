'use client';

import { useMutation } from '@tanstack/react-query';
import { useParams } from 'next/navigation';
import { useId } from 'react';
import { RECEIVE_WORDS as words } from '#words/handovers.ts';
import { saidOf } from '../../kit/data/unreachable.ts';
import { Message } from '../../kit/message.tsx';
import { PageFrame } from '../../kit/page-frame.tsx';
import { Banner } from '../banner.tsx';
import { SignedIn } from '../signed-in.tsx';
import { FileOffer } from './file-offer.tsx';
import { lookAtHandover } from './send-handover.ts';

/** Brings a handover file into a crew: looked at first, then made a rig. */
export function HandoverFilePage() {
  const { crew } = useParams<{ crew: string }>();
  return (
    <PageFrame title={words.fileTitle} banner={<Banner name={words.fileTitle} />}>
      <SignedIn>{() => <BringIn crewId={crew} />}</SignedIn>
    </PageFrame>
  );
}

function BringIn({ crewId }: { readonly crewId: string }) {
  const look = useMutation({ mutationFn: (file: File) => lookAtHandover(crewId, file) });
  return (
    <div className="flex flex-col gap-6">
      <div className="flex max-w-prose flex-col gap-3">
        <p>{words.fileAbout}</p>
        <ChooseFile onFile={look.mutate} />
        {look.isPending ? (
          <p role="status" className="text-soft">
            {words.reading}
          </p>
        ) : null}
        {look.error === null ? null : <Message severity="blocker" said={saidOf(look.error)} />}
      </div>
      {look.data === undefined || look.variables === undefined ? null : (
        <FileOffer key={look.submittedAt} crewId={crewId} file={look.variables} look={look.data} />
      )}
    </div>
  );
}

function ChooseFile({ onFile }: { readonly onFile: (file: File) => void }) {
  const id = useId();
  return (
    <div>
      <label
        htmlFor={id}
        className="inline-flex min-h-control cursor-pointer items-center rounded-control border border-ink bg-ink px-3 font-medium text-sheet has-focus-visible:outline-2 has-focus-visible:outline-offset-2 has-focus-visible:outline-ink"
      >
        {words.choose}
        <input
          id={id}
          type="file"
          accept=".zip"
          className="sr-only"
          onChange={(event) => {
            const input = event.currentTarget;
            const [file] = input.files ?? [];
            if (file !== undefined) onFile(file);
            input.value = ''; // so that the same file can be chosen again
          }}
        />
      </label>
    </div>
  );
}
