import { type HandoverLook, HandoverRef } from '#wire/handovers.ts';
import { lookAtHandover } from '../../tasks/handover/look-at-handover.ts';
import { signedIn } from '../procedures.ts';
import { Refused } from '../refused.ts';

/** What a link offers; of an offer that is closed, what one hears of a link that never was. */
export const lookAtOffer = signedIn.input(HandoverRef).query(async ({ ctx, input }): Promise<HandoverLook> => {
  const look = await lookAtHandover(ctx, { ...input, userId: ctx.user.id });
  if (look === undefined) throw new Refused('no-such-handover');
  return look;
});
