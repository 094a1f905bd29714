import { ok, type Result, refuse } from '#base/result.ts';
import type { Refusal } from '#wire/refusal.ts';
import { auditEntry } from '../audit/audit-entry.ts';
import type { TaskContext } from '../task-context.ts';

interface ToDecide {
  /** The house rig, and whose it is. */
  readonly house: { readonly rigId: string; readonly rigName: string; readonly crewId: string };
  readonly proposalId: string;
  readonly outcome: 'accepted' | 'declined';
  readonly words: string;
  readonly by: { readonly id: string; readonly name: string };
}

/** Closes a proposal with what the crew of the house says to it. What they take of it they have written into their rig themselves. */
export async function decideProposal(
  { store, clock }: TaskContext,
  { house, proposalId, outcome, words, by }: ToDecide,
): Promise<Result<undefined, Refusal>> {
  const where = { id: proposalId, rigId: house.rigId };
  const at = new Date(clock.now());
  return store.prisma.$transaction(async (tx) => {
    const proposal = await tx.proposal.findFirst({ where, select: { fromRigName: true, fromCrewName: true } });
    if (proposal === null) return refuse('no-such-proposal');
    const decided = { decidedBy: by.id, decidedByName: by.name, decidedAt: at };
    const closed = await tx.proposal.updateMany({
      where: { ...where, state: 'open' },
      data: { state: outcome, answer: words, ...decided },
    });
    if (closed.count === 0) return refuse('proposal-closed');
    const what = { rig: house.rigName, was: proposal.fromRigName, crew: proposal.fromCrewName };
    const { crewId, rigId } = house;
    await auditEntry(tx, { crewId, by, at, kind: `proposal-${outcome}`, rigId, what });
    return ok(undefined);
  });
}
