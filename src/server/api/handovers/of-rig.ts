import type { HandoverSummary } from '#wire/handovers.ts';
import { listHandovers } from '../../tasks/handover/list-handovers.ts';
import { onRig } from '../procedures.ts';

/** The offers of the rig's revisions, and what became of each. */
export const handoversOfRig = onRig('handover.read').query(
  ({ ctx, input }): Promise<readonly HandoverSummary[]> =>
    listHandovers(ctx, { crewId: ctx.rig.crewId, rigId: input.rigId }),
);
