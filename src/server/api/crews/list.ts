import type { CrewSummary } from '#wire/crews.ts';
import { signedIn } from '../procedures.ts';

/** My crews, by name. */
export const listCrews = signedIn.query(async ({ ctx }): Promise<readonly CrewSummary[]> => {
  const memberships = await ctx.store.prisma.membership.findMany({
    where: { userId: ctx.user.id },
    include: { crew: { include: { _count: { select: { memberships: true, rigs: { where: { removedAt: null } } } } } } },
    orderBy: [{ crew: { name: 'asc' } }, { crewId: 'asc' }],
  });
  return memberships.map(({ role, crew }) => ({
    id: crew.id,
    name: crew.name,
    role,
    members: crew._count.memberships,
    rigs: crew._count.rigs,
  }));
});
