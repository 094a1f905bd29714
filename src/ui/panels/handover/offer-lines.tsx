import { useMutation } from '@tanstack/react-query';
import { useState } from 'react';
import type { HandoverSummary } from '#wire/handovers.ts';
import { HANDOVERS_WORDS, handoverState, OFFER_WORDS as words } from '#words/handovers.ts';
import { useTRPC } from '../../kit/data/trpc.tsx';
import { saidOf } from '../../kit/data/unreachable.ts';
import { LinkButton } from '../../kit/link-button.tsx';
import { TextLink } from '../../kit/text-link.tsx';
import { ConfirmDialog } from '../confirm-dialog.tsx';
import { rigPath } from '../rig/rig-address.ts';

export interface OfferLinesProps {
  readonly handovers: readonly HandoverSummary[];
  /** Says of each which rig it is of; left out where that is plain. */
  readonly titleOf?: (handover: HandoverSummary) => string;
  /** Whether I may take back what was given. */
  readonly writable: boolean;
}

/** Offers one below the other: what was said with each, what became of it, and the way back while it is open. */
export function OfferLines({ handovers, titleOf, writable }: OfferLinesProps) {
  const [asked, setAsked] = useState<HandoverSummary>();
  return (
    <>
      <ul>
        {handovers.map((handover) => (
          <li
            key={handover.id}
            className="flex flex-col gap-0.5 border-t border-rule px-2 py-2 first:border-t-0 [overflow-wrap:anywhere]"
          >
            {titleOf === undefined ? null : <h3 className="font-serif text-large">{titleOf(handover)}</h3>}
            {handover.words === '' ? null : <p>{HANDOVERS_WORDS.said(handover.by, handover.words)}</p>}
            <p className="flex flex-wrap items-baseline gap-x-4">
              <span className="text-soft">{handoverState(handover)}</span>
              {writable && handover.way === 'given' && handover.state === 'offered' ? (
                <LinkButton onClick={() => setAsked(handover)}>{words.takeBack}</LinkButton>
              ) : null}
              {handover.receivedId === null ? null : (
                <TextLink href={rigPath(handover.receivedId, 'sheet')}>{HANDOVERS_WORDS.toRig}</TextLink>
              )}
            </p>
            {handover.answer === '' ? null : <p>{HANDOVERS_WORDS.said(handover.decidedBy ?? '', handover.answer)}</p>}
          </li>
        ))}
      </ul>
      {asked === undefined ? null : <TakeBack handover={asked} onClose={() => setAsked(undefined)} />}
    </>
  );
}

function TakeBack({ handover, onClose }: { readonly handover: HandoverSummary; readonly onClose: () => void }) {
  const withdraw = useMutation(useTRPC().handovers.withdraw.mutationOptions({ onSuccess: onClose }));
  return (
    <ConfirmDialog
      title={words.takeBackTitle}
      about={words.takeBackAbout}
      submit={words.takeBack}
      busy={withdraw.isPending}
      refused={withdraw.error === null ? undefined : saidOf(withdraw.error)}
      onConfirm={() => withdraw.mutate({ rigId: handover.rigId, handoverId: handover.id })}
      onClose={onClose}
    />
  );
}
