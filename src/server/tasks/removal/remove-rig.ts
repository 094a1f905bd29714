import { ok, type Result, refuse } from '#base/result.ts';
import type { Refusal } from '#wire/refusal.ts';
import { auditEntry } from '../audit/audit-entry.ts';
import type { Doer } from '../audit/doer.ts';
import { lockRig } from '../lock-rig.ts';
import type { TaskContext } from '../task-context.ts';

/**
 * Takes a rig off everybody's lists and closes it for all who have it open. Nothing of it is touched: until its days are over it can be
 * brought back as it was.
 */
export async function removeRig(
  { store, clock, revoke }: TaskContext,
  { rigId, by }: { readonly rigId: string; readonly by: Doer },
): Promise<Result<null, Refusal>> {
  const at = new Date(clock.now());
  const result = await store.prisma.$transaction(async (tx): Promise<Result<null, Refusal>> => {
    const rig = await lockRig(tx, rigId);
    if (rig === null || rig.removedAt !== null) return refuse('no-such-rig');
    await tx.rig.update({ where: { id: rigId }, data: { removedAt: at, removedBy: by.id } });
    await auditEntry(tx, { crewId: rig.crewId, by, at, kind: 'rig-removed', rigId, what: { rig: rig.name } });
    return ok(null);
  });
  if (result.ok) await revoke({ rig: rigId });
  return result;
}
