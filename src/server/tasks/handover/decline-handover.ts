import { ok, type Result, refuse } from '#base/result.ts';
import type { Refusal } from '#wire/refusal.ts';
import { auditEntry } from '../audit/audit-entry.ts';
import type { TaskContext } from '../task-context.ts';
import { findOffer } from './find-offer.ts';

interface Declining {
  readonly token: string;
  readonly words: string;
  readonly by: { readonly id: string; readonly name: string };
  /** The crew that they decline for; null: they speak for none. */
  readonly crew: { readonly crewId: string; readonly crewName: string } | null;
}

/** Closes an offer without a rig. Both crews keep who declined it, and in which words. */
export async function declineHandover(
  context: TaskContext,
  { token, words, by, crew }: Declining,
): Promise<Result<null, Refusal>> {
  const offer = await findOffer(context, { token, userId: by.id });
  if (offer?.state !== 'offered') return refuse('no-such-handover');
  if (offer.crewId === crew?.crewId) return refuse('handover-own');
  const at = new Date(context.clock.now());
  return context.store.prisma.$transaction(async (tx) => {
    const closed = await tx.handover.updateMany({
      where: { id: offer.id, state: 'offered', expiresAt: { gt: at } },
      data: {
        state: 'declined',
        decidedBy: by.id,
        decidedByName: by.name,
        decidedAt: at,
        answer: words,
        toCrewId: crew?.crewId ?? null,
        toCrewName: crew?.crewName ?? null,
      },
    });
    if (closed.count === 0) return refuse('no-such-handover');
    const { crewId, rigId, number } = offer;
    const said = { by, at, kind: 'handover-declined' } as const;
    const what = { rig: offer.revision.rig.name, number };
    await auditEntry(tx, { ...said, crewId, rigId, what: crew === null ? what : { ...what, crew: crew.crewName } });
    if (crew !== null) await auditEntry(tx, { ...said, crewId: crew.crewId, what: { ...what, crew: offer.crew.name } });
    return ok(null);
  });
}
