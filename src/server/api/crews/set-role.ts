import { SetMemberRole } from '#wire/crews.ts';
import { changeRole } from '../../tasks/change-role.ts';
import { inCrew } from '../procedures.ts';
import { granted } from '../refused.ts';

export const setRole = inCrew('crew.manage-members')
  .input(SetMemberRole)
  .mutation(async ({ ctx, input }): Promise<null> => granted(await changeRole(ctx, { ...input, by: ctx.user })));
