import { ok, type Result, refuse } from '#base/result.ts';
import { CAPS } from '#wire/caps.ts';
import { ARCHIVE_FORMAT, type ArchiveManifest } from '#wire/crew-archive.ts';
import type { Refusal } from '#wire/refusal.ts';
import { type PackedEntry, pack } from '../../archive/pack.ts';
import type { Store } from '../../db/store.ts';
import { auditEntry } from '../audit/audit-entry.ts';
import type { Doer } from '../audit/doer.ts';
import type { TaskContext } from '../task-context.ts';
import { crewParts } from './crew-parts.ts';
import { textEntry } from './json-entry.ts';
import { MANIFEST, sha256Of, writeManifest } from './manifest.ts';
import { type CrewRows, readCrew } from './read-crew.ts';

interface TakingOut {
  readonly crewId: string;
  readonly by: Doer;
  /** The version of this program. */
  readonly program: string;
}

/**
 * Everything of a crew as an archive, written while it is read: nobody's edit waits for it, and no more than one part is in memory. That it
 * was taken out is written down first, so that the archive says so too.
 */
export async function takeOut(
  { store, clock }: Pick<TaskContext, 'store' | 'clock'>,
  { crewId, by, program }: TakingOut,
): Promise<Result<AsyncGenerator<Uint8Array, void>, Refusal>> {
  if (!(await fits(store, crewId))) return refuse('crew-too-large');
  const at = new Date(clock.now());
  const { name } = await store.prisma.crew.findUniqueOrThrow({ where: { id: crewId } });
  await auditEntry(store.prisma, { crewId, by, at, kind: 'archive-out', what: { crew: name } });
  const rows = await readCrew(store, crewId);
  if (rows === undefined) return refuse('no-such-crew');
  return ok(pack(sealed(crewParts(store, rows), aboutArchive(rows, at, program))));
}

type About = Omit<ArchiveManifest, 'seal' | 'parts'>;

function aboutArchive({ crew, rigs, types, drafts }: CrewRows, at: Date, program: string): About {
  const counts = { rigs: rigs.length, types: types.length, drafts: drafts.length };
  return { format: ARCHIVE_FORMAT, program, at: at.toISOString(), crew: { id: crew.id, name: crew.name }, counts };
}

/** The parts, and behind them the manifest, which says of each what it has to be. */
async function* sealed(entries: AsyncIterable<PackedEntry>, about: About): AsyncGenerator<PackedEntry> {
  const parts: ArchiveManifest['parts'] = [];
  for await (const { name, bytes } of entries) {
    const own = Uint8Array.from(bytes);
    parts.push({ name, size: own.length, sha256: await sha256Of(own) });
    yield { name, bytes: own };
  }
  yield textEntry(MANIFEST, writeManifest({ ...about, parts }));
}

/** Whether an archive of the crew could be brought in again. What is packed already hardly packs any better. */
async function fits({ sql }: Store, crewId: string): Promise<boolean> {
  const [row] = await sql.query<{ readonly parts: number; readonly packed: number; readonly whole: number }>(
    `with rigs as (select id, head from rig where crew_id = $1),
          drafts as (select id, head from type_draft where crew_id = $1),
          logs as (
            select count(distinct rig_id) as logs, count(*) as rows, coalesce(sum(octet_length(bytes)), 0) as bytes
              from rig_update where rig_id in (select id from rigs)
            union all
            select count(distinct draft_id), count(*), coalesce(sum(octet_length(bytes)), 0)
              from type_draft_update where draft_id in (select id from drafts)),
          frozen as (
            select count(*) as rows, coalesce(sum(octet_length(content) + octet_length(findings)), 0) as bytes,
                   coalesce(sum(size), 0) as whole
              from rig_revision where rig_id in (select id from rigs)),
          said as (
            select count(*) as rows, coalesce(sum(octet_length(r.content)), 0) as bytes
              from type_revision r join fixture_type t on t.id = r.type_id where t.crew_id = $1)
     select ((select count(*) from rigs) + 2 * (select count(*) from drafts) + 2 * frozen.rows + 3 * said.rows
             + (select sum(2 * logs + 2 * rows / ${CAPS.archiveLogRows} + 2 * bytes / ${CAPS.archiveLogBytes}) from logs))::float8 as parts,
            ((select sum(bytes + rows * 20) from logs) + frozen.bytes + said.bytes / 4)::float8 as packed,
            ((select sum(bytes + rows * 100) from logs) + 2 * frozen.whole + said.bytes)::float8 as whole
       from frozen, said`,
    [crewId],
  );
  if (!row) return false;
  return row.parts < CAPS.archiveParts && row.packed < CAPS.archiveFile && row.whole < CAPS.archiveTotal;
}
