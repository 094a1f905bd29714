import { ok, type Result, refuse } from '#base/result.ts';
import type { Refusal } from '#wire/refusal.ts';
import { auditEntry } from './audit/audit-entry.ts';
import type { Doer } from './audit/doer.ts';
import { leadsBesides } from './leads-besides.ts';
import { lockCrew } from './lock-crew.ts';
import type { TaskContext } from './task-context.ts';
import { withdrawInvitations } from './withdraw-invitations.ts';

/** Takes a person out of a crew, whether they leave or are removed. The last lead stays. Their open invitations end too. */
export async function endMembership(
  { store, clock, revoke }: TaskContext,
  { crewId, userId, by }: { readonly crewId: string; readonly userId: string; readonly by: Doer },
): Promise<Result<null, Refusal>> {
  const result = await store.prisma.$transaction(async (tx): Promise<Result<null, Refusal>> => {
    await lockCrew(tx, crewId);
    const where = { crewId_userId: { crewId, userId } };
    const member = await tx.membership.findUnique({ where, include: { user: true } });
    if (!member) return refuse('no-such-member');
    if (member.role === 'lead' && (await leadsBesides(tx, crewId, userId)) === 0) return refuse('last-lead');
    await tx.membership.delete({ where });
    const at = new Date(clock.now());
    const what = { person: member.user.name, role: member.role };
    const kind = by.id === userId ? 'member-left' : 'member-removed';
    await auditEntry(tx, { crewId, by, at, kind, what });
    await withdrawInvitations(tx, { crewId, by, at, which: { createdBy: userId } });
    return ok(null);
  });
  if (result.ok) await revoke({ user: userId });
  return result;
}
