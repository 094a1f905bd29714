import { DeclineHandover } from '#wire/handovers.ts';
import { may } from '../../access/policy.ts';
import { type CrewStanding, standingInCrew } from '../../access/standing.ts';
import type { Store } from '../../db/store.ts';
import { declineHandover } from '../../tasks/handover/decline-handover.ts';
import { signedIn } from '../procedures.ts';
import { granted, Refused } from '../refused.ts';

/** Declines what a link offers, for a crew in which the person may make rigs, or for none. */
export const declineOffer = signedIn.input(DeclineHandover).mutation(async ({ ctx, input }): Promise<null> => {
  const { token, words, crewId } = input;
  const crew = crewId === null ? null : await speaksFor(ctx.store, ctx.user.id, crewId);
  return granted(await declineHandover(ctx, { token, words, crew, by: ctx.user }));
});

async function speaksFor(store: Store, userId: string, crewId: string): Promise<CrewStanding> {
  const crew = await standingInCrew(store, userId, crewId);
  if (!crew) throw new Refused('no-such-crew');
  if (!may(crew.role, 'rig.create')) throw new Refused('role-too-low');
  return crew;
}
