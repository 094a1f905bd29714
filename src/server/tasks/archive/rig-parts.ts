import { promisify } from 'node:util';
import { inflate } from 'node:zlib';
import { CAPS } from '#wire/caps.ts';
import type { ArchivedRig } from '#wire/crew-archive.ts';
import type { Provenance } from '#wire/record.ts';
import type { PackedEntry } from '../../archive/pack.ts';
import type { Store } from '../../db/store.ts';
import { jsonEntry } from './json-entry.ts';
import { logParts } from './log-parts.ts';
import type { CrewRows } from './read-crew.ts';

type RigRow = CrewRows['rigs'][number];

/** The parts of one rig: what it is, what was frozen of it, and its log. */
export async function* rigParts(
  { prisma, sql }: Store,
  rows: CrewRows,
  rig: RigRow,
  folder: string,
): AsyncGenerator<PackedEntry> {
  yield jsonEntry(`${folder}/rig.json`, aboutRig(rows, rig));
  for (const { number } of rig.revisions) {
    const where = { rigId_number: { rigId: rig.id, number } };
    const { content, findings } = await prisma.rigRevision.findUniqueOrThrow({
      where,
      select: { content: true, findings: true },
    });
    yield { name: `${folder}/revisions/${number}.json`, bytes: await inflated(content) };
    yield { name: `${folder}/revisions/${number}.findings.json`, bytes: await inflated(findings) };
  }
  yield* logParts(sql, { kind: 'rig', id: rig.id, head: Number(rig.head), folder });
}

// What goes out is named one by one: a column that is added later, such as one that opens a door, stays here until it is named too.

function aboutRig({ handovers }: CrewRows, rig: RigRow): ArchivedRig {
  return {
    id: rig.id,
    name: rig.name,
    kind: rig.kind,
    venueId: rig.venueId,
    createdAt: iso(rig.createdAt),
    removedAt: isoOrNull(rig.removedAt),
    removedBy: rig.removedBy,
    // Written by `storeNewRig` and never changed since.
    startedFrom: rig.startedFrom as unknown as Provenance | null,
    head: Number(rig.head),
    revisions: rig.revisions.map(aboutRevision),
    handovers: handovers.filter(({ rigId }) => rigId === rig.id).map(aboutHandover),
    proposals: rig.proposals.map(aboutProposal),
  };
}

function aboutRevision(row: RigRow['revisions'][number]): ArchivedRig['revisions'][number] {
  const { number, hash, note, units, by, byName } = row;
  // Written by `freezeRig` and never changed since.
  const counts = row.counts as unknown as ArchivedRig['revisions'][number]['counts'];
  const accepted = row.accepted as unknown as ArchivedRig['revisions'][number]['accepted'];
  return { number, hash, seq: Number(row.seq), note, units, counts, accepted, by, byName, at: iso(row.at) };
}

function aboutHandover(row: CrewRows['handovers'][number]): ArchivedRig['handovers'][number] {
  const { id, number, state, toCrewId, toCrewName, receivedId } = row;
  return { id, number, state, expiresAt: iso(row.expiresAt), toCrewId, toCrewName, receivedId, ...decided(row) };
}

function aboutProposal(row: RigRow['proposals'][number]): ArchivedRig['proposals'][number] {
  const { id, fromRigId, fromRigName, fromCrewId, fromCrewName, number, state } = row;
  const edits = row.edits as ArchivedRig['proposals'][number]['edits'];
  return { id, fromRigId, fromRigName, fromCrewId, fromCrewName, number, edits, state, ...decided(row) };
}

function decided(row: CrewRows['handovers'][number] | RigRow['proposals'][number]) {
  const { words, createdBy, createdByName, decidedBy, decidedByName, answer } = row;
  const [createdAt, decidedAt] = [iso(row.createdAt), isoOrNull(row.decidedAt)];
  return { words, createdBy, createdByName, createdAt, decidedBy, decidedByName, decidedAt, answer };
}

const inflate_ = promisify<Uint8Array, { maxOutputLength: number }, Buffer>(inflate);
const inflated = (bytes: Uint8Array) => inflate_(bytes, { maxOutputLength: CAPS.archivePart });

const iso = (at: Date): string => at.toISOString();
const isoOrNull = (at: Date | null): string | null => (at === null ? null : at.toISOString());
