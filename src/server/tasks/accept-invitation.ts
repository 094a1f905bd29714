import { ok, type Result, refuse } from '#base/result.ts';
import { CAPS } from '#wire/caps.ts';
import type { Refusal } from '#wire/refusal.ts';
import type { Prisma } from '../db/generated/client.ts';
import { auditEntry } from './audit/audit-entry.ts';
import type { Doer } from './audit/doer.ts';
import { hashToken } from './hash-token.ts';
import { lockCrew } from './lock-crew.ts';
import type { TaskContext } from './task-context.ts';

interface Accepting {
  readonly token: string;
  readonly by: Doer;
}

/**
 * Lets a person in by a link, which is used up in the same transaction: of two who accept at once, one gets in. Whoever is a
 * member already stays what they are, and the link stays open for somebody else.
 */
export function acceptInvitation(
  { store, clock }: TaskContext,
  { token, by }: Accepting,
): Promise<Result<{ crewId: string }, Refusal>> {
  const now = new Date(clock.now());
  const userId = by.id;
  return store.prisma.$transaction(async (tx) => {
    const found = await tx.invitation.findUnique({ where: { tokenHash: hashToken(token) } });
    if (!found) return refuse('invitation-gone');
    const { crewId } = found;
    await lockCrew(tx, crewId);
    if (await tx.membership.findUnique({ where: { crewId_userId: { crewId, userId } } })) return ok({ crewId });
    const full = await whyFull(tx, { crewId, userId });
    if (full) return refuse(full);
    const used = await tx.invitation.updateMany({
      where: { id: found.id, usedAt: null, expiresAt: { gt: now } },
      data: { usedAt: now, usedBy: userId },
    });
    if (used.count === 0) return refuse(await whyUseless(tx, found.id));
    const { role } = found;
    await tx.membership.create({ data: { crewId, userId, role } });
    await auditEntry(tx, { crewId, by, at: now, kind: 'invitation-used', what: { role } });
    return ok({ crewId });
  });
}

async function whyFull(
  tx: Prisma.TransactionClient,
  { crewId, userId }: { readonly crewId: string; readonly userId: string },
): Promise<Refusal | undefined> {
  if ((await tx.membership.count({ where: { crewId } })) >= CAPS.membersPerCrew) return 'too-many';
  if ((await tx.membership.count({ where: { userId } })) >= CAPS.crewsPerPerson) return 'too-many-crews';
  return undefined;
}

/** The invitation was there a moment ago, and could not be used: why. */
async function whyUseless(tx: Prisma.TransactionClient, id: string): Promise<Refusal> {
  const found = await tx.invitation.findUnique({ where: { id } });
  if (!found) return 'invitation-gone';
  return found.usedAt ? 'invitation-used' : 'invitation-expired';
}
