import { ok, type Result, refuse } from '#base/result.ts';
import { CAPS } from '#wire/caps.ts';
import type { NewHandover } from '#wire/handovers.ts';
import type { Refusal } from '#wire/refusal.ts';
import { auditEntry } from '../audit/audit-entry.ts';
import { hashToken } from '../hash-token.ts';
import { lockCrew } from '../lock-crew.ts';
import type { TaskContext } from '../task-context.ts';

const DAYS_OPEN = 14;

interface ToOffer {
  readonly rigId: string;
  readonly rigName: string;
  readonly number: number;
  readonly crewId: string;
  readonly words: string;
  readonly by: { readonly id: string; readonly name: string };
}

/** A link by which one other crew may take a revision within a fortnight. Its token is in the answer and nowhere else. */
export function offerHandover(
  { store, clock, makeId }: TaskContext,
  { rigId, rigName, number, crewId, words, by }: ToOffer,
): Promise<Result<NewHandover, Refusal>> {
  const at = new Date(clock.now());
  const token = makeId() + makeId();
  return store.prisma.$transaction(async (tx) => {
    const where = { rigId_number: { rigId, number } };
    const revision = await tx.rigRevision.findUnique({ where, select: { number: true } });
    if (revision === null) return refuse('no-such-rig-revision');
    await lockCrew(tx, crewId);
    const open = await tx.handover.count({ where: { crewId, state: 'offered', expiresAt: { gt: at } } });
    if (open >= CAPS.openHandoversPerCrew) return refuse('too-many-handovers');
    const expiresAt = new Date(at.getTime() + DAYS_OPEN * 24 * 60 * 60 * 1000);
    const who = { createdBy: by.id, createdByName: by.name, createdAt: at };
    const { id } = await tx.handover.create({
      data: { id: makeId(), rigId, number, crewId, tokenHash: hashToken(token), words, expiresAt, ...who },
    });
    await auditEntry(tx, { crewId, by, at, kind: 'handover-offered', rigId, what: { rig: rigName, number } });
    return ok({ id, path: `/handover/${token}`, expiresAt: expiresAt.toISOString() });
  });
}
