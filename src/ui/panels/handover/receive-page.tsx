'use client';

import { useQuery } from '@tanstack/react-query';
import { useParams } from 'next/navigation';
import { useState } from 'react';
import type { HandoverLook } from '#wire/handovers.ts';
import { RECEIVE_WORDS as words } from '#words/handovers.ts';
import { KIT_WORDS } from '#words/screens.ts';
import { useTRPC } from '../../kit/data/trpc.tsx';
import { Message } from '../../kit/message.tsx';
import { PageFrame } from '../../kit/page-frame.tsx';
import { TextLink } from '../../kit/text-link.tsx';
import { Banner } from '../banner.tsx';
import { Asked } from '../library/asked.tsx';
import { rigPath } from '../rig/rig-address.ts';
import { SignedIn } from '../signed-in.tsx';
import { AnswerPart } from './answer-part.tsx';
import { HandedOver } from './handed-over.tsx';
import { OfferHead } from './offer-head.tsx';
import { SinceLastHad } from './since-last-had.tsx';
import { useOffered } from './use-offered.ts';

/** What the link of a handover leads to: what is offered, and the answer to it. */
export function ReceivePage() {
  const { token } = useParams<{ token: string }>();
  return (
    <PageFrame title={words.title} banner={<Banner name={words.title} />}>
      <SignedIn>{() => <Received token={token} />}</SignedIn>
    </PageFrame>
  );
}

function Received({ token }: { readonly token: string }) {
  const [declined, setDeclined] = useState(false);
  const look = useQuery(useTRPC().handovers.look.queryOptions({ token }, { enabled: !declined }));
  if (declined) return <Message severity="note" said={{ what: words.declined }} />;
  return (
    <Asked answer={{ value: look.error === null ? look.data : undefined, error: look.error }}>
      {(offer) => <Offer token={token} look={offer} onDeclined={() => setDeclined(true)} />}
    </Asked>
  );
}

interface OfferProps {
  readonly token: string;
  readonly look: HandoverLook;
  readonly onDeclined: () => void;
}

function Offer({ token, look, onDeclined }: OfferProps) {
  const offered = useOffered(token);
  const all = useQuery(useTRPC().crews.list.queryOptions()).data;
  const [chosen, setChosen] = useState<string>();
  if (all === undefined) return <p className="text-soft">{KIT_WORDS.loading}</p>;
  const crews = all.filter(({ id, role }) => role !== 'reader' && id !== look.giverId);
  // The crew that had the rig before is the likeliest one.
  const had = crews.find(({ id }) => look.lastHad.some((each) => each.crewId === id));
  const crewId = chosen ?? had?.id ?? crews[0]?.id ?? '';
  return (
    <div className="flex flex-col gap-6">
      <OfferHead offer={look} />
      {look.receivedId === null ? (
        <AnswerPart
          token={token}
          look={look}
          crews={crews}
          crewId={crewId}
          onCrew={setChosen}
          onDeclined={onDeclined}
        />
      ) : (
        <Message severity="note" said={{ what: words.taken }}>
          <TextLink href={rigPath(look.receivedId, 'sheet')}>{words.toYours}</TextLink>
        </Message>
      )}
      <Asked answer={offered}>
        {({ rig, findings }) => (
          <>
            {look.receivedId === null ? (
              <SinceLastHad
                last={look.lastHad.find((each) => each.crewId === crewId)}
                offered={rig}
                rigName={look.rigName}
              />
            ) : null}
            <HandedOver rig={rig} findings={findings} number={look.number} />
          </>
        )}
      </Asked>
    </div>
  );
}
