import { type InvitationLook, InvitationRef } from '#wire/invitations.ts';
import { lookAtInvitation as look } from '../../tasks/look-at-invitation.ts';
import { open } from '../procedures.ts';

/** What a link leads to, for whoever holds it. */
export const lookAtInvitation = open
  .input(InvitationRef)
  .query(({ ctx, input }): Promise<InvitationLook> => look(ctx, { token: input.token, userId: ctx.user?.id }));
