import { MakeProposal } from '#wire/proposals.ts';
import { makeProposal } from '../../tasks/proposals/make-proposal.ts';
import { onRig } from '../procedures.ts';
import { granted } from '../refused.ts';

/** Proposes to the house rig that the rig began as what is to stay changed in it; answers with the id of the proposal. */
export const makeOneProposal = onRig('proposal.make')
  .input(MakeProposal)
  .mutation(async ({ ctx, input }): Promise<{ readonly id: string }> => {
    const { houseId, number, words, edits } = input;
    return { id: granted(await makeProposal(ctx, { show: ctx.rig, houseId, number, words, edits, by: ctx.user })) };
  });
