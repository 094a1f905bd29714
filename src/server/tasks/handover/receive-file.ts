import { type Result, refuse } from '#base/result.ts';
import type { ReceiveFile } from '#wire/handovers.ts';
import type { Provenance } from '#wire/record.ts';
import type { Refusal } from '#wire/refusal.ts';
import type { RigSummary } from '#wire/rigs.ts';
import type { TakenHandover } from '../../handover/handover-job.ts';
import { addRig, isVenueOf } from '../add-rig.ts';
import { storableText } from '../library/storable.ts';
import type { TaskContext } from '../task-context.ts';

interface Receiving extends ReceiveFile {
  readonly crewId: string;
  readonly by: { readonly id: string; readonly name: string };
  readonly taken: TakenHandover;
}

/** Makes a rig of the crew that begins as the one in a handover file. Its own revision 1 is that one, byte for byte. */
export async function receiveFile(
  { store, clock, makeId, record }: TaskContext,
  { crewId, name, kind, venueId, by, taken }: Receiving,
): Promise<Result<RigSummary, Refusal>> {
  if (!(await isVenueOf(store, crewId, venueId))) return refuse('no-such-venue');
  const update = await record.begin(taken.rig);
  if (!update.ok) return update;
  const id = makeId();
  const at = new Date(clock.now());
  const from = provenance(taken, at);
  const begin = { update: update.value, from, revision: firstRevision(id, taken) };
  const what = { rig: name, was: from.rigName, number: from.number, crew: from.crewName };
  const audit = [{ crewId, by, at, kind: 'handover-read', rigId: id, what }] as const;
  return addRig(store, { id, at, crewId, venueId, name, kind, by, begin, audit });
}

function provenance({ about: { from, rig, revision } }: TakenHandover, at: Date): Provenance {
  return {
    rigId: rig.id,
    rigName: storableText(rig.name),
    rigKind: rig.kind,
    crewId: from.crewId,
    crewName: storableText(from.crewName),
    venueName: rig.venueName === null ? null : storableText(rig.venueName),
    number: revision.number,
    hash: revision.hash,
    at: at.toISOString(),
    way: 'file',
  };
}

/** What the rules say of it is our own word; who answers for a blocker is the giver's, as far as there is such a blocker. */
function firstRevision(rigId: string, { about: { revision }, rig }: TakenHandover) {
  const { blockers, counts, ...stored } = rig;
  const accepted = revision.accepted.filter(({ key }) => blockers.includes(key));
  return {
    ...stored,
    rigId,
    number: 1,
    seq: 1n,
    note: storableText(revision.note),
    counts: { ...counts },
    accepted: accepted.map(({ key, by }) => ({ key: storableText(key), by: storableText(by) })),
    // Nobody of this installation.
    by: '',
    byName: storableText(revision.by),
    at: new Date(revision.at),
  };
}
