import { ProposalRef } from '#wire/proposals.ts';
import { withdrawProposal } from '../../tasks/proposals/withdraw-proposal.ts';
import { onRig } from '../procedures.ts';
import { granted } from '../refused.ts';

/** Takes back a proposal that the rig has made. */
export const withdrawOneProposal = onRig('proposal.make')
  .input(ProposalRef)
  .mutation(async ({ ctx, input }): Promise<void> => {
    granted(await withdrawProposal(ctx, { show: ctx.rig, proposalId: input.proposalId, by: ctx.user }));
  });
