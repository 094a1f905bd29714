import type { ArchivedRig } from '#wire/crew-archive.ts';
import { Prisma } from '../../db/generated/client.ts';
import { hashOf } from '../../record/record-job.ts';
import { hashToken } from '../hash-token.ts';
import { unreadable } from './archive-refused.ts';
import { boundedText, type Folder, type Writing, writeLog } from './writing.ts';

/** A rig with its log, what was frozen of it, and what became of that. */
export async function writeRig(writing: Writing, rig: ArchivedRig, within: Folder): Promise<void> {
  const { prisma } = writing.context.store;
  const id = writing.renaming.of('rig', rig.id);
  await prisma.rig.create({ data: { ...aboutRig(writing, rig), id } });
  const state = await writeLog(writing, within, { kind: 'rig', id, head: rig.head });
  await prisma.rigCheckpoint.create({ data: { rigId: id, ...state } });
  for (const [at, revision] of rig.revisions.entries()) {
    if (revision.number !== at + 1 || revision.seq > rig.head) throw unreadable(`${within.folder}/rig.json`);
    await writeRevision(writing, { id, revision }, within);
  }
  await prisma.handover.createMany({ data: rig.handovers.map((each) => handoverRow(writing, id, each)) });
  await prisma.proposal.createMany({ data: rig.proposals.map((each) => proposalRow(writing, id, each)) });
}

function aboutRig({ crewId, renaming, person }: Writing, rig: ArchivedRig) {
  const { name, kind, venueId, createdAt, removedAt, removedBy, startedFrom, head } = rig;
  const from = startedFrom && {
    ...startedFrom,
    rigId: renaming.of('rig', startedFrom.rigId),
    crewId: renaming.of('crew', startedFrom.crewId),
  };
  return {
    crewId,
    name,
    kind,
    createdAt,
    removedAt,
    head: BigInt(head),
    venueId: venueId === null ? null : renaming.of('venue', venueId),
    removedBy: removedBy === null ? null : person(removedBy),
    startedFrom: from ?? Prisma.DbNull,
  };
}

async function writeRevision(
  { context, renaming }: Writing,
  { id, revision }: { readonly id: string; readonly revision: ArchivedRig['revisions'][number] },
  within: Folder,
): Promise<void> {
  const name = `${within.folder}/revisions/${revision.number}`;
  const text = boundedText(within, `${name}.json`);
  const findings = boundedText(within, `${name}.findings.json`);
  const checked = await context.record.checkFrozen(text, findings);
  if (!checked.ok || hashOf(text) !== revision.hash) throw unreadable(`${name}.json`);
  const { seq, by, ...rest } = revision;
  await context.store.prisma.rigRevision.create({
    data: { ...rest, ...checked.value, rigId: id, seq: BigInt(seq), by: renaming.person(by) },
  });
}

/** No link leads to it any more: what its token would hash to was never in an archive. */
function handoverRow(
  { context, crewId, renaming }: Writing,
  rigId: string,
  handover: ArchivedRig['handovers'][number],
) {
  const { id, toCrewId, receivedId, createdBy, decidedBy, ...rest } = handover;
  return {
    ...rest,
    id: renaming.of('handover', id),
    rigId,
    crewId,
    tokenHash: hashToken(context.makeId() + context.makeId()),
    toCrewId: toCrewId === null ? null : renaming.of('crew', toCrewId),
    receivedId: receivedId === null ? null : renaming.of('rig', receivedId),
    createdBy: renaming.person(createdBy),
    decidedBy: decidedBy === null ? null : renaming.person(decidedBy),
  };
}

function proposalRow({ renaming }: Writing, rigId: string, proposal: ArchivedRig['proposals'][number]) {
  const { id, fromRigId, fromCrewId, edits, createdBy, decidedBy, ...rest } = proposal;
  return {
    ...rest,
    id: renaming.of('proposal', id),
    rigId,
    fromRigId: renaming.of('rig', fromRigId),
    fromCrewId: renaming.of('crew', fromCrewId),
    edits: edits ?? Prisma.JsonNull,
    createdBy: renaming.person(createdBy),
    decidedBy: decidedBy === null ? null : renaming.person(decidedBy),
  };
}
