import type { HandoverLook } from '#wire/handovers.ts';
import type { Provenance } from '#wire/record.ts';
import type { TaskContext } from '../task-context.ts';
import { findOffer } from './find-offer.ts';
import { lastHad } from './last-had.ts';

/** What the link of an offer leads to. Whoever holds the link of an open one learns this of the rig, and nothing else. */
export async function lookAtHandover(
  context: TaskContext,
  who: { readonly token: string; readonly userId: string },
): Promise<HandoverLook | undefined> {
  const offer = await findOffer(context, who);
  if (offer === undefined) return undefined;
  const { crew, revision } = offer;
  const { rig } = revision;
  const from = rig.startedFrom as Provenance | null;
  const isMember = await context.store.prisma.membership.findUnique({
    where: { crewId_userId: { crewId: offer.crewId, userId: who.userId } },
  });
  return {
    crewName: crew.name,
    rigName: rig.name,
    rigKind: rig.kind,
    venueName: rig.venue?.name ?? null,
    number: offer.number,
    hash: revision.hash,
    note: revision.note,
    words: offer.words,
    units: revision.units,
    // Written by `freezeRig` and never changed since.
    counts: revision.counts as unknown as HandoverLook['counts'],
    by: offer.createdByName,
    at: offer.createdAt.toISOString(),
    frozenAt: revision.at.toISOString(),
    lastHad: await lastHad(context.store, { userId: who.userId, rigId: offer.rigId, from }),
    expiresAt: offer.expiresAt.toISOString(),
    receivedId: offer.state === 'accepted' ? offer.receivedId : null,
    giverId: isMember === null ? null : offer.crewId,
  };
}
