import { ok, type Result, refuse } from '#base/result.ts';
import { CAPS } from '#wire/caps.ts';
import type { NewInvitation } from '#wire/invitations.ts';
import type { Refusal } from '#wire/refusal.ts';
import type { Role } from '#wire/role.ts';
import { auditEntry } from './audit/audit-entry.ts';
import type { Doer } from './audit/doer.ts';
import { hashToken } from './hash-token.ts';
import type { TaskContext } from './task-context.ts';

const DAYS_OPEN = 7;

/** A link that lets one person into a crew within a week. Its token is in the answer and nowhere else. */
export async function createInvitation(
  { store, clock, makeId }: TaskContext,
  { crewId, role, by }: { readonly crewId: string; readonly role: Role; readonly by: Doer },
): Promise<Result<NewInvitation, Refusal>> {
  const now = clock.now();
  const open = await store.prisma.invitation.count({
    where: { crewId, usedAt: null, expiresAt: { gt: new Date(now) } },
  });
  if (open >= CAPS.openInvitationsPerCrew) return refuse('too-many');
  const token = makeId() + makeId();
  const expiresAt = new Date(now + DAYS_OPEN * 24 * 60 * 60 * 1000);
  const id = makeId();
  const data = { id, crewId, role, tokenHash: hashToken(token), createdBy: by.id, expiresAt };
  await store.prisma.$transaction([
    store.prisma.invitation.create({ data }),
    auditEntry(store.prisma, { crewId, by, at: new Date(now), kind: 'invitation-made', what: { role } }),
  ]);
  return ok({ id, path: `/join/${token}`, expiresAt: expiresAt.toISOString() });
}
