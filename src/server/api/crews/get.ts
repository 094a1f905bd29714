import type { CrewDetail, OpenInvitation } from '#wire/crews.ts';
import { may } from '../../access/policy.ts';
import type { TaskContext } from '../../tasks/task-context.ts';
import { inCrew } from '../procedures.ts';

/** A crew with its members and, for its leads, the invitations still open. */
export const getCrew = inCrew('crew.read').query(async ({ ctx }): Promise<CrewDetail> => {
  const { crewId, crewName, role } = ctx.crew;
  const members = await ctx.store.prisma.membership.findMany({
    where: { crewId },
    include: { user: true },
    orderBy: [{ user: { name: 'asc' } }, { userId: 'asc' }],
  });
  return {
    id: crewId,
    name: crewName,
    role,
    members: members.map(({ user, role, joinedAt }) => ({
      userId: user.id,
      name: user.name,
      email: user.email,
      role,
      joinedAt: joinedAt.toISOString(),
    })),
    invitations: may(role, 'crew.invite') ? await openInvitations(ctx, crewId) : [],
  };
});

async function openInvitations({ store, clock }: TaskContext, crewId: string): Promise<readonly OpenInvitation[]> {
  const invitations = await store.prisma.invitation.findMany({
    where: { crewId, usedAt: null, expiresAt: { gt: new Date(clock.now()) } },
    include: { creator: true },
    orderBy: [{ createdAt: 'desc' }, { id: 'asc' }],
  });
  return invitations.map(({ id, role, creator, createdAt, expiresAt }) => ({
    id,
    role,
    createdByName: creator.name,
    createdAt: createdAt.toISOString(),
    expiresAt: expiresAt.toISOString(),
  }));
}
