// Run as a process of its own: what a crowd is measured against.

import { createServer } from 'node:http';
import { WebSocket, WebSocketServer } from 'ws';
import { openStore, type StoreConfig } from '#server/db/open-store.ts';
import { createSqlLog } from '#server/sync/sql-log.ts';
import type { UpdateLog } from '#server/sync/update-log.ts';
import { readOrders, serveOn } from '#tests/support/serve-port.ts';
import { startSyncServer, userOf } from '#tests/support/sync-server.ts';

export interface CrowdOrders {
  /** `sync` is ours; `one by one` is ours without group commit; `relay` passes messages on and does nothing else. */
  readonly manner: 'sync' | 'one by one' | 'relay';
  readonly store: StoreConfig;
  readonly root: string;
}

const orders = readOrders<CrowdOrders>();
serveOn(orders.manner === 'relay' ? await startRelay() : await startSync());

async function startSync(): Promise<number> {
  const store = await openStore(orders.store, { root: orders.root, onLost: () => undefined });
  const log = createSqlLog(store.sql);
  const { port } = await startSyncServer({
    log: orders.manner === 'sync' ? log : oneByOne(log),
    authorise: async (request) => ({ user: userOf(request), name: userOf(request), role: 'writer' }),
  });
  return port;
}

function oneByOne(log: UpdateLog): UpdateLog {
  return {
    ...log,
    append: async (batch) => {
      const answers = [];
      for (const one of batch) answers.push(...(await log.append([one])));
      return answers;
    },
  };
}

function startRelay(): Promise<number> {
  const sockets = new WebSocketServer({ noServer: true, perMessageDeflate: false });
  const server = createServer();
  server.on('upgrade', (request, socket, head) => {
    sockets.handleUpgrade(request, socket, head, (one) => {
      one.on('message', (frame: Buffer) => {
        for (const other of sockets.clients)
          if (other !== one && other.readyState === WebSocket.OPEN) other.send(frame);
      });
    });
  });
  return new Promise((resolve) => {
    server.listen(0, '127.0.0.1', () => {
      const address = server.address();
      resolve(typeof address === 'object' && address ? address.port : 0);
    });
  });
}
