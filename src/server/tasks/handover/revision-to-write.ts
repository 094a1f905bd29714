import type { HandoverAbout } from '#engine/handover/handover-about.ts';
import type { Provenance } from '#wire/record.ts';
import type { ToWrite } from '../../handover/handover-job.ts';
import { storableJson } from '../library/storable.ts';
import type { TaskContext } from '../task-context.ts';

interface Asked {
  readonly rigId: string;
  readonly number: number;
  readonly words: string;
  /** Who writes the file. */
  readonly by: string;
}

/** A stored revision with all that a file of it says; undefined when there is no such revision. */
export async function revisionToWrite(
  { store, clock }: Pick<TaskContext, 'store' | 'clock'>,
  { rigId, number, words, by }: Asked,
): Promise<ToWrite | undefined> {
  const revision = await store.prisma.rigRevision.findUnique({
    where: { rigId_number: { rigId, number } },
    include: { rig: { include: { crew: true, venue: true } } },
  });
  if (revision === null) return undefined;
  const { rig, content, hash, findings } = revision;
  const about: HandoverAbout = {
    from: { crewId: rig.crewId, crewName: rig.crew.name, by },
    writtenAt: new Date(clock.now()).toISOString(),
    words,
    rig: { id: rigId, name: rig.name, kind: rig.kind, venueName: rig.venue?.name ?? null },
    revision: {
      number,
      hash,
      note: revision.note,
      by: revision.byName,
      at: revision.at.toISOString(),
      units: revision.units,
      // Written by `freezeRig` and never changed since.
      counts: revision.counts as unknown as HandoverAbout['revision']['counts'],
      accepted: revision.accepted as unknown as HandoverAbout['revision']['accepted'],
    },
    startedFrom: beginningOf(rig.startedFrom as Provenance | null),
  };
  return { about: JSON.parse(storableJson(about)), frozen: { content, hash }, findings };
}

const beginningOf = (from: Provenance | null): HandoverAbout['startedFrom'] =>
  from && {
    rigId: from.rigId,
    rigName: from.rigName,
    crewName: from.crewName,
    number: from.number,
    hash: from.hash,
  };
