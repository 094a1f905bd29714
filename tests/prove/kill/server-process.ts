// Run as a process of its own: the sync service on a real store, which kills itself at a point it is told.

import { openStore, type StoreConfig } from '#server/db/open-store.ts';
import type { Sql } from '#server/db/sql.ts';
import { loadRig } from '#server/stored/load-rig.ts';
import { createSqlLog } from '#server/sync/sql-log.ts';
import type { UpdateLog } from '#server/sync/update-log.ts';
import { readOrders, serveOn } from '#tests/support/serve-port.ts';
import { startSyncServer, userOf } from '#tests/support/sync-server.ts';

interface Orders {
  readonly store: StoreConfig;
  readonly root: string;
  readonly point: string;
  /** Dies at the so-manieth time the point is reached. */
  readonly nth: number;
  readonly manner: 'honest' | 'hasty';
}

const orders = readOrders<Orders>();
let reached = 0;

function pass(point: string): void {
  if (point === orders.point && ++reached >= orders.nth) process.kill(process.pid, 'SIGKILL');
}

/** A transaction has two points more: everything is done but the commit, and the commit is done. */
function withPoints(sql: Sql): Sql {
  return {
    query: (text, parameters) => sql.query(text, parameters),
    transaction: async (work) => {
      const value = await sql.transaction(async (tx) => {
        const done = await work(tx);
        pass('committing');
        return done;
      });
      pass('committed');
      return value;
    },
  };
}

/** Answers first and stores a little later: what must never happen, to see that it is found out. */
function hasty(log: UpdateLog): UpdateLog {
  let head = 0;
  return {
    ...log,
    open: async (rig) => {
      const opened = await log.open(rig);
      head = opened ? loadRig(opened.stored).seq : 0;
      return opened;
    },
    append: async (batch) => {
      setTimeout(() => void log.append(batch), 300);
      return batch.map(() => ++head);
    },
  };
}

const store = await openStore(orders.store, { root: orders.root, onLost: () => undefined });
const log = createSqlLog(withPoints(store.sql));
const { port } = await startSyncServer({
  log: orders.manner === 'hasty' ? hasty(log) : log,
  authorise: async (request) => ({ user: userOf(request), name: userOf(request), role: 'writer' }),
  checkpointRows: 20,
  keepRowsMs: 0,
  probe: pass,
});
serveOn(port);
