import { WithdrawHandover } from '#wire/handovers.ts';
import { withdrawHandover } from '../../tasks/handover/withdraw-handover.ts';
import { onRig } from '../procedures.ts';
import { granted } from '../refused.ts';

/** Takes an offer of the rig back, until it is answered. */
export const withdrawOffer = onRig('handover.offer')
  .input(WithdrawHandover)
  .mutation(async ({ ctx, input }): Promise<null> => {
    const { crewId, rigName } = ctx.rig;
    return granted(await withdrawHandover(ctx, { ...input, crewId, rigName, by: ctx.user }));
  });
