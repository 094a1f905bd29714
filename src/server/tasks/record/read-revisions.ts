import type { RevisionPart, RigRevisionSummary } from '#wire/record.ts';
import type { Store } from '../../db/store.ts';

/** All revisions of a rig, the newest first. */
export async function rigRevisions(store: Store, rigId: string): Promise<readonly RigRevisionSummary[]> {
  const rows = await store.prisma.rigRevision.findMany({
    where: { rigId },
    orderBy: { number: 'desc' },
    omit: { content: true, findings: true },
  });
  return rows.map((row) => ({
    number: row.number,
    hash: row.hash,
    note: row.note,
    units: row.units,
    // Written by `freezeRig` and never changed since.
    counts: row.counts as unknown as RigRevisionSummary['counts'],
    accepted: row.accepted as unknown as RigRevisionSummary['accepted'],
    by: row.byName,
    at: row.at.toISOString(),
  }));
}

/** A part of a revision as it is stored, deflated; undefined when there is no such revision. */
export async function revisionBytes(
  store: Store,
  { rigId, number, part }: { readonly rigId: string; readonly number: number; readonly part: RevisionPart },
): Promise<Uint8Array<ArrayBuffer> | undefined> {
  const where = { rigId_number: { rigId, number } };
  if (part === 'findings') {
    const row = await store.prisma.rigRevision.findUnique({ where, select: { findings: true } });
    return row?.findings;
  }
  const row = await store.prisma.rigRevision.findUnique({ where, select: { content: true } });
  return row?.content;
}
