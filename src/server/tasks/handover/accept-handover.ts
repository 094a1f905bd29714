import { present } from '#base/assert.ts';
import { ok, type Result, refuse } from '#base/result.ts';
import { CAPS } from '#wire/caps.ts';
import type { AcceptHandover } from '#wire/handovers.ts';
import type { Refusal } from '#wire/refusal.ts';
import type { RigSummary } from '#wire/rigs.ts';
import { auditEntry } from '../audit/audit-entry.ts';
import { lockCrew } from '../lock-crew.ts';
import { beginAs } from '../record/start-rig.ts';
import { rigSummaries } from '../rig-summaries.ts';
import { newRigWrites } from '../store-new-rig.ts';
import type { TaskContext } from '../task-context.ts';
import { type FoundOffer, findOffer } from './find-offer.ts';

interface Accepting extends AcceptHandover {
  readonly by: { readonly id: string; readonly name: string };
  /** The name of the receiving crew; whoever calls has seen to it that the person may make rigs there. */
  readonly crewName: string;
}

/**
 * Makes a rig of the receiving crew that begins as the offered revision, and closes the offer, in one transaction: of two who accept at
 * once, one gets it.
 */
export async function acceptHandover(context: TaskContext, asked: Accepting): Promise<Result<RigSummary, Refusal>> {
  const { store, clock, makeId } = context;
  const { crewId, venueId, by } = asked;
  const offer = await findOffer(context, { token: asked.token, userId: by.id });
  if (offer?.state !== 'offered') return refuse('no-such-handover');
  if (offer.crewId === crewId) return refuse('handover-own');
  if (venueId !== null && !(await store.prisma.venue.findFirst({ where: { id: venueId, crewId } })))
    return refuse('no-such-venue');
  const id = makeId();
  const at = new Date(clock.now());
  const { rigId, number } = offer;
  const begun = await beginAs(context, { rigId, number, id, at, way: 'handover' });
  if (!begun.ok) return begun;
  const stored = await store.prisma.$transaction(async (tx): Promise<Result<null, Refusal>> => {
    await lockCrew(tx, crewId);
    if ((await tx.rig.count({ where: { crewId, removedAt: null } })) >= CAPS.rigsPerCrew) return refuse('too-many');
    const taken = await tx.handover.updateMany({
      where: { id: offer.id, state: 'offered', expiresAt: { gt: at } },
      data: { ...answered(asked, at), receivedId: id },
    });
    if (taken.count === 0) return refuse('no-such-handover');
    const { name, kind } = asked;
    const rig = { id, crewId, venueId, name, kind, userId: by.id, at, begin: begun.value };
    for (const write of newRigWrites(tx, rig)) await write;
    for (const entry of entries(offer, asked, { id, at })) await auditEntry(tx, entry);
    return ok(null);
  });
  if (!stored.ok) return stored;
  const [summary] = await rigSummaries(store, { userId: by.id, rigId: id });
  return ok(present(summary, `rig ${id} was made for ${by.id}, who is not in crew ${crewId}`));
}

const answered = ({ by, crewId, crewName, words }: Accepting, at: Date) => ({
  state: 'accepted' as const,
  decidedBy: by.id,
  decidedByName: by.name,
  decidedAt: at,
  answer: words,
  toCrewId: crewId,
  toCrewName: crewName,
});

/** What the giver and the receiver each keep of it. */
function entries(
  { rigId, number, crewId, crew, revision }: FoundOffer,
  asked: Accepting,
  { id, at }: { readonly id: string; readonly at: Date },
) {
  const { by } = asked;
  const rig = revision.rig.name;
  return [
    { crewId, by, at, kind: 'handover-accepted', rigId, what: { rig, number, crew: asked.crewName } },
    {
      crewId: asked.crewId,
      by,
      at,
      kind: 'handover-received',
      rigId: id,
      what: { rig: asked.name, was: rig, number, crew: crew.name },
    },
  ] as const;
}
