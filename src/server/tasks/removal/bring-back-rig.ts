import { ok, type Result, refuse } from '#base/result.ts';
import { CAPS } from '#wire/caps.ts';
import type { Refusal } from '#wire/refusal.ts';
import { auditEntry } from '../audit/audit-entry.ts';
import type { Doer } from '../audit/doer.ts';
import { lockRig } from '../lock-rig.ts';
import type { TaskContext } from '../task-context.ts';

/** Puts a removed rig back on everybody's lists, as it was. Another rig may have its name by now: rigs may share one. */
export function bringBackRig(
  { store, clock }: TaskContext,
  { rigId, by }: { readonly rigId: string; readonly by: Doer },
): Promise<Result<null, Refusal>> {
  const at = new Date(clock.now());
  return store.prisma.$transaction(async (tx): Promise<Result<null, Refusal>> => {
    const rig = await lockRig(tx, rigId);
    if (rig === null || rig.removedAt === null) return refuse('no-such-removed-rig');
    const { crewId, name } = rig;
    if ((await tx.rig.count({ where: { crewId, removedAt: null } })) >= CAPS.rigsPerCrew) return refuse('too-many');
    await tx.rig.update({ where: { id: rigId }, data: { removedAt: null, removedBy: null } });
    await auditEntry(tx, { crewId, by, at, kind: 'rig-brought-back', rigId, what: { rig: name } });
    return ok(null);
  });
}
