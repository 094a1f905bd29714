import pg from 'pg';
import * as Y from 'yjs';
import { systemClock } from '#base/clock.ts';
import { openPostgres } from '#server/db/open-postgres.ts';
import type { Store } from '#server/db/store.ts';
import { createGroupCommit } from '#server/sync/group-commit.ts';
import { createSqlLog } from '#server/sync/sql-log.ts';
import { findPostgres } from '#tests/support/machine.mjs';
import { newRigIn } from '#tests/support/new-rig.ts';
import { startPostgres } from '#tests/support/postgres.ts';
import type { Outcome } from './frame/bench.ts';

export const name = 'append';
export const bar = '≥ 2 × single-row INSERT at 50 clients on Postgres';

const CLIENTS = 50;
const root = new URL('../../', import.meta.url).pathname;

/** Durable acknowledged updates a second: fifty clients, each sending its next update once the last is acknowledged. */
export async function run({ smoke }: { readonly smoke: boolean }): Promise<Outcome> {
  if (!findPostgres()) return { ratio: 0, figure: 'no Postgres here', baseline: '-', ok: smoke };
  const postgres = await startPostgres();
  const url = await postgres.createDatabase();
  const store = await openPostgres(url, { prismaFolder: `${root}prisma`, onLost: () => undefined });
  try {
    const seconds = smoke ? 0.3 : 5;
    const single = await perSecond(seconds, await singleRows(url));
    const grouped = await perSecond(seconds, await groups(store));
    return {
      ratio: grouped / single,
      figure: `${Math.round(grouped)}/s`,
      baseline: `${Math.round(single)}/s`,
      ok: grouped >= 2 * single,
    };
  } finally {
    await store.close();
    await postgres.stop();
  }
}

interface Appending {
  append(bytes: Uint8Array): Promise<void>;
  close(): Promise<void>;
}

async function perSecond(seconds: number, { append, close }: Appending): Promise<number> {
  const bytes = someUpdate();
  const clients = async (until: number) => {
    let done = 0;
    const client = async () => {
      while (performance.now() < until) {
        await append(bytes);
        done += 1;
      }
    };
    await Promise.all(Array.from({ length: CLIENTS }, client));
    return done;
  };
  await clients(performance.now() + seconds * 200);
  const from = performance.now();
  const done = await clients(from + seconds * 1000);
  const took = performance.now() - from;
  await close();
  return (done * 1000) / took;
}

/** Each update an INSERT of its own into the same table, on a connection of its own. */
async function singleRows(url: string): Promise<Appending> {
  const pool = new pg.Pool({ connectionString: url, max: CLIENTS });
  let seq = 0;
  return {
    append: async (bytes) => {
      const values = ['single rows', ++seq, 'author', new Date(), bytes];
      await pool.query('insert into rig_update (rig_id, seq, author, at, bytes) values ($1, $2, $3, $4, $5)', values);
    },
    close: () => pool.end(),
  };
}

/** As the server does it. */
async function groups(store: Store): Promise<Appending> {
  const log = createSqlLog(store.sql);
  const rig = await newRigIn(store.sql);
  const opened = await log.open(rig);
  if (!opened) throw new Error('the rig is not there');
  const commit = createGroupCommit<() => void>({
    log,
    clock: systemClock,
    queueBytes: 1 << 20,
    turn: () => new Promise(setImmediate),
  });
  const appender = {
    fence: opened.fence,
    committed: (list: readonly { readonly tag: () => void }[]) => {
      for (const { tag } of list) tag();
    },
    failed: (_reason: string, error: Error) => {
      throw error;
    },
  };
  return {
    append: (bytes) =>
      new Promise((resolve) => commit.submit(appender, { rig, author: 'author', at: new Date(), bytes }, resolve)),
    close: () => commit.idle(),
  };
}

/** An edit of one cell, as small as they mostly are. */
function someUpdate(): Uint8Array {
  const doc = new Y.Doc();
  doc.getMap('cells').set('row 12/position', 'LX 1');
  return Y.encodeStateAsUpdate(doc);
}
