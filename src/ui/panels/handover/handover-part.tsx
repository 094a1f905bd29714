import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import type { RigRevisionSummary } from '#wire/record.ts';
import type { RigSummary } from '#wire/rigs.ts';
import { OFFER_WORDS as words } from '#words/handovers.ts';
import { useTRPC } from '../../kit/data/trpc.tsx';
import { LinkButton } from '../../kit/link-button.tsx';
import { OfferDialog } from './offer-dialog.tsx';
import { OfferLines } from './offer-lines.tsx';

interface OfRevision {
  readonly rig: RigSummary;
  readonly number: RigRevisionSummary['number'];
}

/** Asks for words and hands a revision over; for whoever may. */
export function HandOver({ rig, number }: OfRevision) {
  const [open, setOpen] = useState(false);
  if (rig.role === 'reader') return null;
  return (
    <>
      <LinkButton aria-label={words.openName(number)} onClick={() => setOpen(true)}>
        {words.open}
      </LinkButton>
      {open ? <OfferDialog rig={rig} number={number} onClose={() => setOpen(false)} /> : null}
    </>
  );
}

/** To whom a revision was offered, and what became of that; nothing when it never was. */
export function OffersOf({ rig, number }: OfRevision) {
  const handovers = useQuery(useTRPC().handovers.ofRig.queryOptions({ rigId: rig.id })).data ?? [];
  const own = handovers.filter((each) => each.number === number);
  return own.length === 0 ? null : <OfferLines handovers={own} writable={rig.role !== 'reader'} />;
}
