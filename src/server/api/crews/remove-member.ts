import { RemoveMember } from '#wire/crews.ts';
import { endMembership } from '../../tasks/end-membership.ts';
import { inCrew } from '../procedures.ts';
import { granted } from '../refused.ts';

export const removeMember = inCrew('crew.manage-members')
  .input(RemoveMember)
  .mutation(async ({ ctx, input }): Promise<null> => granted(await endMembership(ctx, { ...input, by: ctx.user })));
