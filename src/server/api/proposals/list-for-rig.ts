import type { ProposalsOfRig } from '#wire/proposals.ts';
import { proposalsOfRig } from '../../tasks/proposals/read-proposals.ts';
import { onRig } from '../procedures.ts';

/** What was proposed to a rig, and what it has proposed itself. */
export const listProposals = onRig('proposal.read').query(
  ({ ctx, input }): Promise<ProposalsOfRig> => proposalsOfRig(ctx.store, input.rigId),
);
