import { ok, type Result, refuse } from '#base/result.ts';
import type { Refusal } from '#wire/refusal.ts';
import { auditEntry } from '../audit/audit-entry.ts';
import type { TaskContext } from '../task-context.ts';

interface ToWithdraw {
  readonly handoverId: string;
  readonly rigId: string;
  readonly rigName: string;
  readonly crewId: string;
  readonly by: { readonly id: string; readonly name: string };
}

/** Takes an offer back, unless it was answered already: whoever holds its link finds nothing from then on. */
export function withdrawHandover(
  { store, clock }: TaskContext,
  { handoverId, rigId, rigName, crewId, by }: ToWithdraw,
): Promise<Result<null, Refusal>> {
  const at = new Date(clock.now());
  return store.prisma.$transaction(async (tx) => {
    const found = await tx.handover.findFirst({ where: { id: handoverId, rigId, crewId }, select: { number: true } });
    if (found === null) return refuse('no-such-handover');
    const { count } = await tx.handover.updateMany({
      where: { id: handoverId, state: 'offered' },
      data: { state: 'withdrawn', decidedBy: by.id, decidedByName: by.name, decidedAt: at },
    });
    if (count === 0) return refuse('handover-closed');
    const what = { rig: rigName, number: found.number };
    await auditEntry(tx, { crewId, by, at, kind: 'handover-withdrawn', rigId, what });
    return ok(null);
  });
}
