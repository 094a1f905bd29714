import { ok, type Result, refuse } from '#base/result.ts';
import type { Refusal } from '#wire/refusal.ts';
import type { TaskContext } from '../task-context.ts';
import { auditBoth, type ToPropose } from './make-proposal.ts';

interface ToWithdraw extends Pick<ToPropose, 'show' | 'by'> {
  readonly proposalId: string;
}

/** Takes an open proposal of a show back. */
export async function withdrawProposal(
  { store, clock }: TaskContext,
  { show, proposalId, by }: ToWithdraw,
): Promise<Result<undefined, Refusal>> {
  const where = { id: proposalId, fromRigId: show.rigId };
  const at = new Date(clock.now());
  return store.prisma.$transaction(async (tx) => {
    const proposal = await tx.proposal.findFirst({
      where,
      select: { rig: { select: { id: true, name: true, crewId: true } } },
    });
    if (proposal === null) return refuse('no-such-proposal');
    const closed = await tx.proposal.updateMany({
      where: { ...where, state: 'open' },
      data: { state: 'withdrawn', decidedAt: at },
    });
    if (closed.count === 0) return refuse('proposal-closed');
    const { id, name, crewId } = proposal.rig;
    await auditBoth(tx, { kind: 'proposal-withdrawn', show, house: { rigId: id, rigName: name, crewId }, by, at });
    return ok(undefined);
  });
}
