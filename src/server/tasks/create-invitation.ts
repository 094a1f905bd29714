import { ok, type Result, refuse } from '#base/result.ts';
import { CAPS } from '#wire/caps.ts';
import type { NewInvitation } from '#wire/invitations.ts';
import type { Refusal } from '#wire/refusal.ts';
import type { Role } from '#wire/role.ts';
import { hashToken } from './hash-token.ts';
import type { TaskContext } from './task-context.ts';

const DAYS_OPEN = 7;

/** A link that lets one person into a crew within a week. Its token is in the answer and nowhere else. */
export async function createInvitation(
  { store, clock, makeId }: TaskContext,
  { crewId, role, userId }: { readonly crewId: string; readonly role: Role; readonly userId: string },
): Promise<Result<NewInvitation, Refusal>> {
  const now = clock.now();
  const open = await store.prisma.invitation.count({
    where: { crewId, usedAt: null, expiresAt: { gt: new Date(now) } },
  });
  if (open >= CAPS.openInvitationsPerCrew) return refuse('too-many');
  const token = makeId() + makeId();
  const expiresAt = new Date(now + DAYS_OPEN * 24 * 60 * 60 * 1000);
  const { id } = await store.prisma.invitation.create({
    data: { id: makeId(), crewId, role, tokenHash: hashToken(token), createdBy: userId, expiresAt },
  });
  return ok({ id, path: `/join/${token}`, expiresAt: expiresAt.toISOString() });
}
