import { endMembership } from '../../tasks/end-membership.ts';
import { inCrew } from '../procedures.ts';
import { granted } from '../refused.ts';

/** Takes me out of the crew, unless I am its last lead. */
export const leaveCrew = inCrew('crew.leave').mutation(
  async ({ ctx, input }): Promise<null> =>
    granted(await endMembership(ctx, { crewId: input.crewId, userId: ctx.user.id, by: ctx.user })),
);
