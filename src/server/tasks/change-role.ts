import { ok, type Result, refuse } from '#base/result.ts';
import type { Refusal } from '#wire/refusal.ts';
import type { Role } from '#wire/role.ts';
import { leadsBesides } from './leads-besides.ts';
import { lockCrew } from './lock-crew.ts';
import type { TaskContext } from './task-context.ts';

/** Gives a member another role. The last lead keeps theirs. A lead's open invitations go with the lead's role. */
export async function changeRole(
  { store, revoke }: TaskContext,
  { crewId, userId, role }: { readonly crewId: string; readonly userId: string; readonly role: Role },
): Promise<Result<null, Refusal>> {
  const result = await store.prisma.$transaction(async (tx): Promise<Result<null, Refusal>> => {
    await lockCrew(tx, crewId);
    const member = await tx.membership.findUnique({ where: { crewId_userId: { crewId, userId } } });
    if (!member) return refuse('no-such-member');
    if (member.role === 'lead' && role !== 'lead' && (await leadsBesides(tx, crewId, userId)) === 0)
      return refuse('last-lead');
    await tx.membership.update({ where: { crewId_userId: { crewId, userId } }, data: { role } });
    if (role !== 'lead') await tx.invitation.deleteMany({ where: { crewId, createdBy: userId, usedAt: null } });
    return ok(null);
  });
  if (result.ok) await revoke({ user: userId });
  return result;
}
