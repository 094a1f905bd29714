import { InvitationRef } from '#wire/invitations.ts';
import { acceptInvitation as accept } from '../../tasks/accept-invitation.ts';
import { signedIn } from '../procedures.ts';
import { granted } from '../refused.ts';

/** Lets me in by a link, which is used up by it. */
export const acceptInvitation = signedIn
  .input(InvitationRef)
  .mutation(
    async ({ ctx, input }): Promise<{ crewId: string }> =>
      granted(await accept(ctx, { token: input.token, by: ctx.user })),
  );
