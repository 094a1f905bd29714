import { DecideProposal } from '#wire/proposals.ts';
import { decideProposal } from '../../tasks/proposals/decide-proposal.ts';
import { onRig } from '../procedures.ts';
import { granted } from '../refused.ts';

/** Accepts or declines a proposal to the rig. */
export const decideOneProposal = onRig('proposal.decide')
  .input(DecideProposal)
  .mutation(async ({ ctx, input }): Promise<void> => {
    const { proposalId, outcome, words } = input;
    granted(await decideProposal(ctx, { house: ctx.rig, proposalId, outcome, words, by: ctx.user }));
  });
