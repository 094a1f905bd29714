import { RevokeInvitation } from '#wire/invitations.ts';
import { inCrew } from '../procedures.ts';
import { Refused } from '../refused.ts';

/** Ends an invitation that nobody has used. */
export const revokeInvitation = inCrew('crew.invite')
  .input(RevokeInvitation)
  .mutation(async ({ ctx, input }): Promise<null> => {
    const { count } = await ctx.store.prisma.invitation.deleteMany({
      where: { id: input.invitationId, crewId: input.crewId, usedAt: null },
    });
    if (count === 0) throw new Refused('no-such-invitation');
    return null;
  });
