import { auditEntry } from './audit/audit-entry.ts';
import type { Doer } from './audit/doer.ts';
import { lockRig } from './lock-rig.ts';
import type { TaskContext } from './task-context.ts';

/** Gives a rig another name. */
export function renameRig(
  { store, clock }: TaskContext,
  { rigId, name, by }: { readonly rigId: string; readonly name: string; readonly by: Doer },
): Promise<void> {
  return store.prisma.$transaction(async (tx) => {
    const rig = await lockRig(tx, rigId);
    if (rig === null || rig.name === name) return;
    await tx.rig.update({ where: { id: rigId }, data: { name } });
    const what = { rig: name, was: rig.name };
    await auditEntry(tx, { crewId: rig.crewId, by, at: new Date(clock.now()), kind: 'rig-renamed', rigId, what });
  });
}
