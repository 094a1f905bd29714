import { ok, type Result, refuse } from '#base/result.ts';
import type { Provenance } from '#wire/record.ts';
import type { Refusal } from '#wire/refusal.ts';
import type { RigKind, RigSummary } from '#wire/rigs.ts';
import { addRig, isVenueOf } from '../add-rig.ts';
import type { BegunAs } from '../store-new-rig.ts';
import type { TaskContext } from '../task-context.ts';

interface ToStart {
  /** The rig and its revision that the new one begins as; whoever calls has seen to it that the person may read them. */
  readonly from: { readonly rigId: string; readonly number: number };
  readonly by: { readonly id: string; readonly name: string };
  readonly crewId: string;
  readonly name: string;
  readonly kind: RigKind;
  readonly venueId: string | null;
}

/** A new rig of a crew that begins as a revision of another, with the same units: each is known by its id in both. */
export async function startRig(context: TaskContext, asked: ToStart): Promise<Result<RigSummary, Refusal>> {
  const { store, clock, makeId } = context;
  const { crewId, venueId, by, name, kind } = asked;
  if (!(await isVenueOf(store, crewId, venueId))) return refuse('no-such-venue');
  const id = makeId();
  const at = new Date(clock.now());
  const begun = await beginAs(context, { ...asked.from, id, at, way: 'started' });
  if (!begun.ok) return begun;
  const what = { rig: name, was: begun.value.from.rigName, number: asked.from.number };
  const audit = { crewId, by, at, kind: 'rig-started', rigId: id, what } as const;
  return addRig(store, { id, crewId, venueId, name, kind, by, at, begin: begun.value, audit: [audit] });
}

interface ToBegin {
  readonly rigId: string;
  readonly number: number;
  /** The id of the rig to come. */
  readonly id: string;
  readonly at: Date;
  readonly way: Provenance['way'];
}

/** What a rig needs to begin as a stored revision of another. Its own revision 1 is that one, byte for byte. */
export async function beginAs(
  { store, record }: Pick<TaskContext, 'store' | 'record'>,
  { rigId, number, id, at, way }: ToBegin,
): Promise<Result<BegunAs, Refusal>> {
  const revision = await store.prisma.rigRevision.findUnique({
    where: { rigId_number: { rigId, number } },
    include: { rig: { include: { crew: true, venue: true } } },
  });
  if (revision === null) return refuse('no-such-rig-revision');
  const { rig, ...stored } = revision;
  const update = await record.begin({ content: stored.content, hash: stored.hash });
  if (!update.ok) return update;
  const from: Provenance = {
    rigId,
    rigName: rig.name,
    rigKind: rig.kind,
    crewId: rig.crewId,
    crewName: rig.crew.name,
    venueName: rig.venue?.name ?? null,
    number,
    hash: stored.hash,
    at: at.toISOString(),
    way,
  };
  const counts = stored.counts ?? {};
  const accepted = stored.accepted ?? [];
  return ok({ update: update.value, from, revision: { ...stored, rigId: id, number: 1, seq: 1n, counts, accepted } });
}
