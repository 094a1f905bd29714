import { useQuery } from '@tanstack/react-query';
import { useMemo } from 'react';
import { readEdits } from '#document/edit/edit-schema.ts';
import type { ProposalReceived } from '#wire/proposals.ts';
import { receivedWords, PROPOSAL_WORDS as words } from '#words/proposals.ts';
import { KIT_WORDS } from '#words/screens.ts';
import { Button } from '../../kit/button.tsx';
import { useTRPC } from '../../kit/data/trpc.tsx';
import { saidOf } from '../../kit/data/unreachable.ts';
import { Dialog } from '../../kit/dialog.tsx';
import { Message, type Said } from '../../kit/message.tsx';
import { useFrozenRig } from '../../live/frozen/use-frozen-rig.ts';
import type { RigStore } from '../../live/rig-store.ts';
import { TakeProposal } from './take-proposal.tsx';

export interface TakeDialogProps {
  readonly store: RigStore;
  readonly rigId: string;
  readonly proposal: ProposalReceived;
  readonly onClose: () => void;
}

/** Opens a proposal: its edits, and the revision that they were worked out against. */
export function TakeDialog({ store, rigId, proposal, onClose }: TakeDialogProps) {
  const trpc = useTRPC();
  const read = useQuery(trpc.proposals.get.queryOptions({ rigId, proposalId: proposal.id }));
  const revisions = useQuery(trpc.revisions.list.queryOptions({ rigId }));
  const revision = revisions.data?.find(({ number }) => number === proposal.number);
  const base = useFrozenRig(
    revision === undefined ? undefined : { rigId, number: revision.number, hash: revision.hash },
  );
  const edits = useMemo(() => (read.data === undefined ? undefined : readEdits(read.data.edits)), [read.data]);
  if (base.rig !== undefined && edits !== undefined)
    return (
      <TakeProposal store={store} rigId={rigId} proposal={proposal} base={base.rig} edits={edits} onClose={onClose} />
    );
  const error = read.error ?? revisions.error;
  const trouble: Said | undefined =
    error === null
      ? base.trouble !== undefined || (read.data !== undefined && edits === undefined)
        ? { what: words.unreadable }
        : undefined
      : saidOf(error);
  return (
    <Dialog
      title={receivedWords(proposal)}
      onClose={onClose}
      answers={<Button onClick={onClose}>{KIT_WORDS.close}</Button>}
    >
      {trouble === undefined ? <p>{KIT_WORDS.loading}</p> : <Message severity="blocker" said={trouble} />}
    </Dialog>
  );
}
