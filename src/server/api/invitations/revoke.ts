import { RevokeInvitation } from '#wire/invitations.ts';
import { lockCrew } from '../../tasks/lock-crew.ts';
import { withdrawInvitations } from '../../tasks/withdraw-invitations.ts';
import { inCrew } from '../procedures.ts';
import { Refused } from '../refused.ts';

/** Ends an invitation that nobody has used. */
export const revokeInvitation = inCrew('crew.invite')
  .input(RevokeInvitation)
  .mutation(async ({ ctx, input: { crewId, invitationId } }): Promise<null> => {
    const at = new Date(ctx.clock.now());
    const count = await ctx.store.prisma.$transaction(async (tx) => {
      await lockCrew(tx, crewId);
      return withdrawInvitations(tx, { crewId, by: ctx.user, at, which: { id: invitationId } });
    });
    if (count === 0) throw new Refused('no-such-invitation');
    return null;
  });
