import { useMutation } from '@tanstack/react-query';
import { useState } from 'react';
import type { RestoreLine } from '#engine/diff/restore.ts';
import type { Rig } from '#engine/model/rig.ts';
import type { RigSummary } from '#wire/rigs.ts';
import { madeWords, stateWords, PROPOSAL_WORDS as words } from '#words/proposals.ts';
import { RESTORE_WORDS } from '#words/restore.ts';
import { Button } from '../../kit/button.tsx';
import { useTRPC } from '../../kit/data/trpc.tsx';
import { saidOf } from '../../kit/data/unreachable.ts';
import { LinkButton } from '../../kit/link-button.tsx';
import { Message } from '../../kit/message.tsx';
import { Part } from '../part.tsx';
import type { RestoreRecord } from '../restore/use-restore-records.ts';
import { ProposeDialog } from './propose-dialog.tsx';
import { useProposals } from './use-proposals.ts';

export interface MadePartProps {
  readonly rig: RigSummary;
  readonly record: RestoreRecord;
  /** The show as it is, and the house as its record says. */
  readonly show: Rig;
  readonly house: Rig;
  readonly lines: readonly RestoreLine[];
}

/** What of a show is to stay changed: proposing it to the house, and what became of what was proposed. */
export function MadePart({ rig, record, show, house, lines }: MadePartProps) {
  const trpc = useTRPC();
  const made = useProposals(rig.id)?.made ?? [];
  const withdraw = useMutation(trpc.proposals.withdraw.mutationOptions());
  const [asking, setAsking] = useState(false);
  const stays = lines.filter(({ state }) => state === 'stays');
  const mayPropose = rig.role !== 'reader' && record.house !== null;
  if (stays.length + made.length === 0 && !mayPropose) return null;
  return (
    <div className="print:hidden">
      <Part
        title={words.mine}
        actions={
          mayPropose ? (
            <Button disabled={stays.length === 0} onClick={() => setAsking(true)}>
              {RESTORE_WORDS.propose}
            </Button>
          ) : undefined
        }
      >
        {stays.length === 0 && mayPropose ? <p className="py-1 text-soft">{words.nothingStays}</p> : null}
        {record.house === null ? <p className="py-1 text-soft">{words.notHouse}</p> : null}
        <ul>
          {made.map((proposal) => (
            <li key={proposal.id} className="flex flex-wrap items-baseline gap-x-4 border-b border-rule py-1.5">
              <span>{madeWords(proposal)}</span>
              <span className="font-semibold">{stateWords(proposal)}</span>
              {proposal.words === '' ? null : <span className="text-soft">{proposal.words}</span>}
              {proposal.state === 'open' && rig.role !== 'reader' ? (
                <LinkButton
                  disabled={withdraw.isPending}
                  onClick={() => withdraw.mutate({ rigId: rig.id, proposalId: proposal.id })}
                >
                  {words.withdraw}
                </LinkButton>
              ) : null}
            </li>
          ))}
        </ul>
        {withdraw.error ? <Message severity="blocker" said={saidOf(withdraw.error)} /> : null}
      </Part>
      {asking && record.house !== null ? (
        <ProposeDialog
          rigId={rig.id}
          to={record.house}
          show={show}
          house={house}
          stays={stays}
          onClose={() => setAsking(false)}
        />
      ) : null}
    </div>
  );
}
