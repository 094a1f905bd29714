import { CreateInvitation, type NewInvitation } from '#wire/invitations.ts';
import { createInvitation as create } from '../../tasks/create-invitation.ts';
import { inCrew } from '../procedures.ts';
import { granted } from '../refused.ts';

/** A link that lets one person in. Its path is in this answer only. */
export const createInvitation = inCrew('crew.invite')
  .input(CreateInvitation)
  .mutation(async ({ ctx, input }): Promise<NewInvitation> => granted(await create(ctx, { ...input, by: ctx.user })));
