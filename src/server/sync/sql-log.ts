import { present } from '#base/assert.ts';
import type { Sql } from '../db/sql.ts';
import type { LoggedUpdate, StoredRig } from '../stored/stored-rig.ts';
import { buildCheckpoint } from './build-checkpoint.ts';
import { type Fence, FencedOff, type NewUpdate, type UpdateLog } from './update-log.ts';

/** The tables that one kind of document is in. Written in the code, never taken from a request: their names become part of the SQL. */
interface LogTables {
  /** One row for each document, with `id`, `head` and `fence`. */
  readonly documents: string;
  readonly updates: string;
  readonly checkpoints: string;
  /** The column of updates and checkpoints that names the document. */
  readonly key: string;
  /** The first half of the advisory lock under which one document is compacted at a time: any number of our own. */
  readonly compactionLock: number;
  /** What has to be true of a document's row so that anything is appended. */
  readonly writable: string;
}

export const RIG_TABLES: LogTables = {
  documents: 'rig',
  updates: 'rig_update',
  checkpoints: 'rig_checkpoint',
  key: 'rig_id',
  compactionLock: 7_214_407,
  writable: 'true',
};

/** A draft that was published or dropped takes nothing any more: what its revision lacks was never acknowledged either. */
export const DRAFT_TABLES: LogTables = {
  documents: 'type_draft',
  updates: 'type_draft_update',
  checkpoints: 'type_draft_checkpoint',
  key: 'draft_id',
  compactionLock: 7_214_408,
  writable: `document.state = 'open'`,
};

/** The log in the tables of one kind of document; those of rigs unless others are named. */
export function createSqlLog(sql: Sql, tables: LogTables = RIG_TABLES): UpdateLog {
  const { documents, updates, checkpoints, key } = tables;
  const statement = appendStatement(tables);
  return {
    open: (rig) =>
      sql.transaction(async (tx) => {
        // Waits for an append that is under way, and keeps later ones out until the rig has been read.
        const [taken] = await tx.query<{ fence: number }>(
          `update ${documents} set fence = fence + 1 where id = $1 returning fence`,
          [rig],
        );
        return taken && { fence: Number(taken.fence), stored: await readStored(tx, tables, rig) };
      }),
    async read(rig) {
      const found = await sql.query(`select 1 from ${documents} where id = $1`, [rig]);
      return found.length === 0 ? undefined : readStored(sql, tables, rig);
    },
    append: (batch) => append(sql, statement, batch),
    async lost(held) {
      const rows = await sql.query<{ id: string }>(
        `select id from ${documents} as document join unnest($1::text[], $2::bigint[]) as held(rig, fence)
             on document.id = held.rig and document.fence <> held.fence`,
        [held.map(({ rig }) => rig), held.map(({ fence }) => fence)],
      );
      return rows.map(({ id }) => id);
    },
    checkpoint: (rig) =>
      sql.transaction(async (tx) => {
        await lockForCompaction(tx, tables, rig);
        const stored = await readStored(tx, tables, rig);
        const next = buildCheckpoint(stored);
        if (next) await writeCheckpoint(tx, tables, { rig, ...next });
        return next?.seq ?? stored.checkpoint?.seq;
      }),
    trim: (rig, before) =>
      sql.transaction(async (tx) => {
        await lockForCompaction(tx, tables, rig);
        const [gone] = await tx.query<{ count: number }>(
          `with gone as (
             delete from ${updates}
              where ${key} = $1 and at < $2 and seq <= (select max(seq) from ${checkpoints} where ${key} = $1)
              returning 1)
           select count(*)::int as count from gone`,
          [rig, before],
        );
        return gone?.count ?? 0;
      }),
  };
}

async function lockForCompaction(tx: Sql, { compactionLock }: LogTables, rig: string): Promise<void> {
  await tx.query('select pg_advisory_xact_lock($1, hashtext($2))', [compactionLock, rig]);
}

/** One statement, so that the checkpoint and the rows after it are of one moment. */
async function readStored(sql: Sql, { updates, checkpoints, key }: LogTables, rig: string): Promise<StoredRig> {
  const rows = await sql.query<{ seq: number; bytes: Uint8Array; merged: boolean }>(
    `with newest as (select seq, bytes from ${checkpoints} where ${key} = $1 order by seq desc limit 1)
     select seq, bytes, true as merged from newest
     union all
     select seq, bytes, false from ${updates}
      where ${key} = $1 and seq > coalesce((select seq from newest), 0)
      order by seq`,
    [rig],
  );
  // In a buffer of its own: what decodes it trusts declared lengths.
  const loggedOf = (merged: boolean) =>
    rows
      .filter((row) => row.merged === merged)
      .map(({ seq, bytes }) => ({ seq: Number(seq), bytes: Uint8Array.from(bytes) }));
  return { checkpoint: loggedOf(true)[0], tail: loggedOf(false) };
}

async function writeCheckpoint(
  tx: Sql,
  { checkpoints, key }: LogTables,
  { rig, seq, bytes }: LoggedUpdate & { readonly rig: string },
): Promise<void> {
  // The one before stays, should the newest ever prove unreadable.
  await tx.query(
    `delete from ${checkpoints}
      where ${key} = $1 and seq < (select max(seq) from ${checkpoints} where ${key} = $1)`,
    [rig],
  );
  await tx.query(`insert into ${checkpoints} (${key}, seq, bytes, at) values ($1, $2, $3, now())`, [rig, seq, bytes]);
}

/**
 * One statement for all documents of a batch: it commits as a whole. Taking the numbers from the row of the document holds that row until the commit,
 * so that they are without a gap and become visible in their order. The bytes travel as one value, cut up by the database.
 */
const appendStatement = ({ documents, updates, key, writable }: LogTables): string => `
  with sent as (
    select * from unnest($1::text[], $2::bigint[], $3::int[], $4::text[], $5::float8[], $6::int[], $7::int[])
      as sent(rig, fence, nth, author, at, start, length)),
  moved as (
    update ${documents} as document set head = document.head + wanted.rows
      from (select rig, fence, count(*) as rows from sent group by rig, fence) as wanted
     where document.id = wanted.rig and document.fence = wanted.fence and ${writable}
    returning document.id as rig, document.fence as fence, document.head - wanted.rows as base),
  added as (
    insert into ${updates} (${key}, seq, author, at, bytes)
    select rig, base + nth, author, to_timestamp(at / 1000), substring($8::bytea from start for length)
      from sent join moved using (rig, fence))
  select rig, fence, base from moved`;

async function append(
  sql: Sql,
  statement: string,
  batch: readonly { readonly update: NewUpdate; readonly fence: Fence }[],
): Promise<readonly (number | FencedOff)[]> {
  const places = numbered(batch);
  const rows = await sql.query<{ rig: string; fence: number; base: number }>(statement, [
    batch.map(({ update }) => update.rig),
    batch.map(({ fence }) => fence),
    places.map(({ nth }) => nth),
    batch.map(({ update }) => update.author),
    batch.map(({ update }) => update.at.getTime()),
    places.map(({ start }) => start),
    batch.map(({ update }) => update.bytes.length),
    Buffer.concat(batch.map(({ update }) => update.bytes)),
  ]);
  const bases = new Map(rows.map(({ rig, fence, base }) => [keyOf(rig, Number(fence)), Number(base)]));
  return batch.map(({ update, fence }, at) => {
    const base = bases.get(keyOf(update.rig, fence));
    return base === undefined ? new FencedOff(update.rig) : base + present(places[at], `no place ${at}`).nth;
  });
}

const keyOf = (rig: string, fence: Fence): string => `${fence} ${rig}`;

/** For each update its number within its rig, 1-based, and where its bytes start in the whole, 1-based as SQL counts. */
function numbered(batch: readonly { readonly update: NewUpdate; readonly fence: Fence }[]) {
  const counts = new Map<string, number>();
  let start = 1;
  return batch.map(({ update, fence }) => {
    const key = keyOf(update.rig, fence);
    const nth = (counts.get(key) ?? 0) + 1;
    counts.set(key, nth);
    const place = { nth, start };
    start += update.bytes.length;
    return place;
  });
}
