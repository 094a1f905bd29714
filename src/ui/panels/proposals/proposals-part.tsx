import { useState } from 'react';
import type { ProposalReceived } from '#wire/proposals.ts';
import type { RigSummary } from '#wire/rigs.ts';
import { receivedWords, stateWords, PROPOSAL_WORDS as words } from '#words/proposals.ts';
import { KIT_WORDS } from '#words/screens.ts';
import { Button } from '../../kit/button.tsx';
import type { RigStore } from '../../live/rig-store.ts';
import { Part } from '../part.tsx';
import { TakeDialog } from './take-dialog.tsx';
import { useProposals } from './use-proposals.ts';

export interface ProposalsPartProps {
  readonly store: RigStore;
  readonly rig: RigSummary;
}

/** What shows propose to leave changed in a house rig: its crew looks at each, takes what it will, or declines. */
export function ProposalsPart({ store, rig }: ProposalsPartProps) {
  const received = useProposals(rig.id)?.received;
  const [looking, setLooking] = useState<ProposalReceived>();
  if (received === undefined) return <p className="text-soft">{KIT_WORDS.loading}</p>;
  const open = received.filter(({ state }) => state === 'open');
  const closed = received.filter(({ state }) => state !== 'open');
  return (
    <div className="flex flex-col gap-6">
      <Part title={words.title} about={words.about}>
        {open.length === 0 ? <p className="py-2">{words.none}</p> : null}
        <ul>
          {open.map((proposal) => (
            <li key={proposal.id} className="flex flex-wrap items-center gap-x-5 gap-y-1 border-b border-rule py-2">
              <div className="min-w-0 flex-1 basis-72">
                <p className="text-large">{receivedWords(proposal)}</p>
                {proposal.words === '' ? null : <p className="text-soft">{proposal.words}</p>}
              </div>
              {rig.role === 'reader' ? null : <Button onClick={() => setLooking(proposal)}>{words.look}</Button>}
            </li>
          ))}
        </ul>
      </Part>
      {closed.length === 0 ? null : (
        <Part title={words.closedOnes}>
          <ul>
            {closed.map((proposal) => (
              <li key={proposal.id} className="border-b border-rule py-1.5">
                {receivedWords(proposal)} · <b>{stateWords(proposal)}</b>
              </li>
            ))}
          </ul>
        </Part>
      )}
      {looking === undefined ? null : (
        <TakeDialog store={store} rigId={rig.id} proposal={looking} onClose={() => setLooking(undefined)} />
      )}
    </div>
  );
}
