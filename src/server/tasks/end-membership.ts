import { ok, type Result, refuse } from '#base/result.ts';
import type { Refusal } from '#wire/refusal.ts';
import { leadsBesides } from './leads-besides.ts';
import { lockCrew } from './lock-crew.ts';
import type { TaskContext } from './task-context.ts';

/** Takes a person out of a crew, whether they leave or are removed. The last lead stays. Their open invitations end too. */
export async function endMembership(
  { store, revoke }: TaskContext,
  { crewId, userId }: { readonly crewId: string; readonly userId: string },
): Promise<Result<null, Refusal>> {
  const result = await store.prisma.$transaction(async (tx): Promise<Result<null, Refusal>> => {
    await lockCrew(tx, crewId);
    const member = await tx.membership.findUnique({ where: { crewId_userId: { crewId, userId } } });
    if (!member) return refuse('no-such-member');
    if (member.role === 'lead' && (await leadsBesides(tx, crewId, userId)) === 0) return refuse('last-lead');
    await tx.membership.delete({ where: { crewId_userId: { crewId, userId } } });
    await tx.invitation.deleteMany({ where: { crewId, createdBy: userId, usedAt: null } });
    return ok(null);
  });
  if (result.ok) await revoke({ user: userId });
  return result;
}
