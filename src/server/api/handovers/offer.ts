import { type NewHandover, OfferHandover } from '#wire/handovers.ts';
import { offerHandover } from '../../tasks/handover/offer-handover.ts';
import { onRig } from '../procedures.ts';
import { granted } from '../refused.ts';

/** Offers a revision of the rig by a link, which one other crew may use. */
export const offerRevision = onRig('handover.offer')
  .input(OfferHandover)
  .mutation(async ({ ctx, input }): Promise<NewHandover> => {
    const { crewId, rigName } = ctx.rig;
    return granted(await offerHandover(ctx, { ...input, crewId, rigName, by: ctx.user }));
  });
