import { AcceptHandover } from '#wire/handovers.ts';
import type { RigSummary } from '#wire/rigs.ts';
import { may } from '../../access/policy.ts';
import { standingInCrew } from '../../access/standing.ts';
import { acceptHandover } from '../../tasks/handover/accept-handover.ts';
import { signedIn } from '../procedures.ts';
import { granted, Refused } from '../refused.ts';

/** Takes what a link offers, as a rig of a crew in which the person may make rigs. */
export const acceptOffer = signedIn.input(AcceptHandover).mutation(async ({ ctx, input }): Promise<RigSummary> => {
  const crew = await standingInCrew(ctx.store, ctx.user.id, input.crewId);
  if (!crew) throw new Refused('no-such-crew');
  if (!may(crew.role, 'rig.create')) throw new Refused('role-too-low');
  return granted(await acceptHandover(ctx, { ...input, crewName: crew.crewName, by: ctx.user }));
});
