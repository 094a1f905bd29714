import { useQuery } from '@tanstack/react-query';
import { useMemo } from 'react';
import { readEdits } from '#document/edit/edit-schema.ts';
import type { ProposalReceived } from '#wire/proposals.ts';
import { receivedWords, PROPOSAL_WORDS as words } from '#words/proposals.ts';
import { KIT_WORDS } from '#words/screens.ts';
import { Button } from '../../kit/button.tsx';
import { useTRPC } from '../../kit/data/trpc.tsx';
import { saidOf } from '../../kit/data/unreachable.ts';
import { useFrozenRig } from '../../kit/data/use-revision.ts';
import { Dialog } from '../../kit/dialog.tsx';
import { Message } from '../../kit/message.tsx';
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
  const base = useFrozenRig(rigId, proposal.number);
  const edits = useMemo(() => (read.data === undefined ? undefined : readEdits(read.data.edits)), [read.data]);
  if (base.value !== undefined && edits !== undefined)
    return (
      <TakeProposal store={store} rigId={rigId} proposal={proposal} base={base.value} edits={edits} onClose={onClose} />
    );
  const error = read.error ?? base.error;
  const unread = read.data !== undefined && edits === undefined;
  return (
    <Dialog
      title={receivedWords(proposal)}
      onClose={onClose}
      answers={<Button onClick={onClose}>{KIT_WORDS.close}</Button>}
    >
      {error === null && !unread ? <p>{KIT_WORDS.loading}</p> : null}
      {error === null ? null : <Message severity="blocker" said={saidOf(error)} />}
      {unread ? <Message severity="blocker" said={{ what: words.unreadable }} /> : null}
    </Dialog>
  );
}
