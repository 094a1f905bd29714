import { ok, type Result, refuse } from '#base/result.ts';
import type { AcceptHandover } from '#wire/handovers.ts';
import type { Refusal } from '#wire/refusal.ts';
import type { RigSummary } from '#wire/rigs.ts';
import { addRig, isVenueOf } from '../add-rig.ts';
import { beginAs } from '../record/start-rig.ts';
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
  const { crewId, venueId, by, name, kind } = asked;
  const offer = await findOffer(context, { token: asked.token, userId: by.id });
  if (offer?.state !== 'offered') return refuse('no-such-handover');
  if (offer.crewId === crewId) return refuse('handover-own');
  if (!(await isVenueOf(store, crewId, venueId))) return refuse('no-such-venue');
  const id = makeId();
  const at = new Date(clock.now());
  const { rigId, number } = offer;
  const begun = await beginAs(context, { rigId, number, id, at, way: 'handover' });
  if (!begun.ok) return begun;
  const audit = entries(offer, asked, { id, at });
  const rig = { id, at, crewId, venueId, name, kind, by, begin: begun.value, audit };
  return addRig(store, rig, async (tx) => {
    const closed = await tx.handover.updateMany({
      where: { id: offer.id, state: 'offered', expiresAt: { gt: at } },
      data: { ...answered(asked, at), receivedId: id },
    });
    return closed.count === 0 ? refuse('no-such-handover') : ok(null);
  });
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
  const given = { rig, number, crew: asked.crewName };
  const received = { rig: asked.name, was: rig, number, crew: crew.name };
  return [
    { crewId, by, at, kind: 'handover-accepted', rigId, what: given },
    { crewId: asked.crewId, by, at, kind: 'handover-received', rigId: id, what: received },
  ] as const;
}
