import type { InvitationLook } from '#wire/invitations.ts';
import { hashToken } from './hash-token.ts';
import type { TaskContext } from './task-context.ts';

/** What a link leads to. Whoever holds the link may know the name of the crew; nobody else learns anything. */
export async function lookAtInvitation(
  { store, clock }: TaskContext,
  { token, userId }: { readonly token: string; readonly userId: string | undefined },
): Promise<InvitationLook> {
  const found = await store.prisma.invitation.findUnique({
    where: { tokenHash: hashToken(token) },
    include: { crew: true },
  });
  if (!found) return { state: 'gone' };
  if (found.usedAt) return { state: 'used' };
  if (found.expiresAt.getTime() <= clock.now()) return { state: 'expired' };
  const member = userId
    ? await store.prisma.membership.findUnique({ where: { crewId_userId: { crewId: found.crewId, userId } } })
    : null;
  return { state: 'open', crewName: found.crew.name, role: found.role, member: member !== null };
}
