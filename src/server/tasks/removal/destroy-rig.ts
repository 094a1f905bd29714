import { ok, type Result, refuse } from '#base/result.ts';
import type { Refusal } from '#wire/refusal.ts';
import type { Prisma } from '../../db/generated/client.ts';
import { auditEntry } from '../audit/audit-entry.ts';
import type { Doer } from '../audit/doer.ts';
import { lockRig } from '../lock-rig.ts';
import type { TaskContext } from '../task-context.ts';

interface ToDestroy {
  readonly rigId: string;
  readonly by: Doer;
  /** The name that the person typed; left out when its days are over. */
  readonly typed?: string;
}

/** Deletes a removed rig with everything that is kept of it. There is no way back, and the audit keeps its name. */
export function destroyRig(
  { store, clock }: Pick<TaskContext, 'store' | 'clock'>,
  { rigId, by, typed }: ToDestroy,
): Promise<Result<null, Refusal>> {
  const at = new Date(clock.now());
  return store.prisma.$transaction(async (tx): Promise<Result<null, Refusal>> => {
    const rig = await lockRig(tx, rigId);
    if (rig === null || rig.removedAt === null) return refuse('no-such-removed-rig');
    if (typed !== undefined && typed !== rig.name) return refuse('name-unlike');
    await deleteAllOfRig(tx, rigId);
    await auditEntry(tx, { crewId: rig.crewId, by, at, kind: 'rig-destroyed', rigId, what: { rig: rig.name } });
    return ok(null);
  });
}

/** Every table that holds something of a rig, those first that name others. One that is added belongs here. */
async function deleteAllOfRig(tx: Prisma.TransactionClient, rigId: string): Promise<void> {
  await tx.proposal.deleteMany({ where: { rigId } });
  await tx.handover.deleteMany({ where: { rigId } });
  await tx.rigChange.deleteMany({ where: { rigId } });
  await tx.rigChangeMark.deleteMany({ where: { rigId } });
  await tx.rigRevision.deleteMany({ where: { rigId } });
  await tx.rigCheckpoint.deleteMany({ where: { rigId } });
  await tx.rigUpdate.deleteMany({ where: { rigId } });
  await tx.rig.delete({ where: { id: rigId } });
}
