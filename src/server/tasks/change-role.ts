import { ok, type Result, refuse } from '#base/result.ts';
import type { Refusal } from '#wire/refusal.ts';
import type { Role } from '#wire/role.ts';
import { auditEntry } from './audit/audit-entry.ts';
import type { Doer } from './audit/doer.ts';
import { leadsBesides } from './leads-besides.ts';
import { lockCrew } from './lock-crew.ts';
import type { TaskContext } from './task-context.ts';
import { withdrawInvitations } from './withdraw-invitations.ts';

interface RoleChange {
  readonly crewId: string;
  readonly userId: string;
  readonly role: Role;
  readonly by: Doer;
}

/** Gives a member another role. The last lead keeps theirs. A lead's open invitations go with the lead's role. */
export async function changeRole(
  { store, clock, revoke }: TaskContext,
  { crewId, userId, role, by }: RoleChange,
): Promise<Result<null, Refusal>> {
  const result = await store.prisma.$transaction(async (tx): Promise<Result<null, Refusal>> => {
    await lockCrew(tx, crewId);
    const where = { crewId_userId: { crewId, userId } };
    const member = await tx.membership.findUnique({ where, include: { user: true } });
    if (!member) return refuse('no-such-member');
    if (member.role === 'lead' && role !== 'lead' && (await leadsBesides(tx, crewId, userId)) === 0)
      return refuse('last-lead');
    if (member.role === role) return ok(null);
    await tx.membership.update({ where, data: { role } });
    const at = new Date(clock.now());
    const what = { person: member.user.name, role, was: member.role };
    await auditEntry(tx, { crewId, by, at, kind: 'role-changed', what });
    if (role !== 'lead') await withdrawInvitations(tx, { crewId, by, at, which: { createdBy: userId } });
    return ok(null);
  });
  if (result.ok) await revoke({ user: userId });
  return result;
}
