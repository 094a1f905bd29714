import { ProposalRef, type ProposalToRead } from '#wire/proposals.ts';
import { proposalTo } from '../../tasks/proposals/read-proposals.ts';
import { onRig } from '../procedures.ts';
import { Refused } from '../refused.ts';

/** The edits of a proposal to a rig. */
export const getProposal = onRig('proposal.read')
  .input(ProposalRef)
  .query(async ({ ctx, input }): Promise<ProposalToRead> => {
    const proposal = await proposalTo(ctx.store, input.rigId, input.proposalId);
    if (proposal === undefined) throw new Refused('no-such-proposal');
    return proposal;
  });
