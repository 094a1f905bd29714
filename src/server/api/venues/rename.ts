import { RenameVenue } from '#wire/venues.ts';
import { may } from '../../access/policy.ts';
import { standingInCrew } from '../../access/standing.ts';
import { renameVenue as rename } from '../../tasks/rename-venue.ts';
import { signedIn } from '../procedures.ts';
import { granted, Refused } from '../refused.ts';

export const renameVenue = signedIn.input(RenameVenue).mutation(async ({ ctx, input }): Promise<null> => {
  const venue = await ctx.store.prisma.venue.findUnique({ where: { id: input.venueId } });
  const crew = await standingInCrew(ctx.store, ctx.user.id, venue?.crewId ?? '');
  if (!crew) throw new Refused('no-such-venue');
  if (!may(crew.role, 'venue.write')) throw new Refused('role-too-low');
  return granted(await rename(ctx, input));
});
