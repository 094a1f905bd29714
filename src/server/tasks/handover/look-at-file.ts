import type { HandoverFileLook } from '#wire/handovers.ts';
import type { TakenHandover } from '../../handover/handover-job.ts';
import type { TaskContext } from '../task-context.ts';
import { lastHad } from './last-had.ts';

interface Looking {
  readonly crewId: string;
  readonly userId: string;
  readonly taken: TakenHandover;
}

/** What a file brings, before anything is made of it; and the rig that this crew made of the same revision before, if it is there. */
export async function lookAtFile(
  { store }: Pick<TaskContext, 'store'>,
  { crewId, userId, taken: { about, rig } }: Looking,
): Promise<HandoverFileLook> {
  const { from, revision } = about;
  const last = await lastHad(store, { userId, rigId: about.rig.id, from: about.startedFrom });
  return {
    crewName: from.crewName,
    rigName: about.rig.name,
    rigKind: about.rig.kind,
    venueName: about.rig.venueName,
    number: revision.number,
    hash: rig.hash,
    note: revision.note,
    words: about.words,
    units: rig.units,
    counts: rig.counts,
    by: from.by,
    at: about.writtenAt,
    frozenAt: revision.at,
    lastHad: last.filter((each) => each.crewId === crewId),
    here: await sameHere(store, crewId, { rigId: about.rig.id, hash: rig.hash }),
    rig: Buffer.from(rig.content).toString('base64'),
    findings: Buffer.from(rig.findings).toString('base64'),
  };
}

/** The newest rig of the crew that began as the same revision of the same rig. */
async function sameHere(
  store: TaskContext['store'],
  crewId: string,
  { rigId, hash }: { readonly rigId: string; readonly hash: string },
): Promise<HandoverFileLook['here']> {
  const [row] = await store.sql.query<{ rigId: string; rigName: string; at: Date }>(
    `select id as "rigId", name as "rigName", created_at as at from rig
      where crew_id = $1 and removed_at is null and started_from->>'rigId' = $2 and started_from->>'hash' = $3
      order by created_at desc, id limit 1`,
    [crewId, rigId, hash],
  );
  return row === undefined ? null : { ...row, at: row.at.toISOString() };
}
