import type { VenueSummary } from '#wire/venues.ts';
import { signedIn } from '../procedures.ts';

/** The venues of all my crews, by name. */
export const listVenues = signedIn.query(async ({ ctx }): Promise<readonly VenueSummary[]> => {
  const venues = await ctx.store.prisma.venue.findMany({
    where: { crew: { memberships: { some: { userId: ctx.user.id } } } },
    include: { crew: true },
    orderBy: [{ name: 'asc' }, { id: 'asc' }],
  });
  return venues.map(({ id, name, crew }) => ({ id, name, crewId: crew.id, crewName: crew.name }));
});
