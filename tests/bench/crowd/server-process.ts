// Run as a process of its own: what a crowd is measured against.

import { createServer } from 'node:http';
import { setTimeout as pause } from 'node:timers/promises';
import { WebSocket, WebSocketServer } from 'ws';
import { systemClock } from '#base/clock.ts';
import { openStore, type StoreConfig } from '#server/db/open-store.ts';
import type { Store } from '#server/db/store.ts';
import { createRecordWorkers } from '#server/record/record-workers.ts';
import { createSqlLog } from '#server/sync/sql-log.ts';
import type { UpdateLog } from '#server/sync/update-log.ts';
import { freezeRig } from '#server/tasks/record/freeze-rig.ts';
import { readOrders, serveOn } from '#tests/support/serve-port.ts';
import { startSyncServer, userOf } from '#tests/support/sync-server.ts';

export interface CrowdOrders {
  /** `sync` is ours; `one by one` is ours without group commit; `relay` passes messages on and does nothing else. */
  readonly manner: 'sync' | 'one by one' | 'relay';
  /** Besides, this rig is frozen again and again, as fast as that goes. */
  readonly freezing?: string;
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
  if (orders.freezing !== undefined) void keepFreezing(store, log, orders.freezing);
  return port;
}

/** Freezes the rig as the API does; a rig that nobody changed meanwhile is refused, and tried again. */
async function keepFreezing(store: Store, log: UpdateLog, rigId: string): Promise<never> {
  const rig = await store.prisma.rig.findUniqueOrThrow({ where: { id: rigId } });
  const context = { store, clock: systemClock, record: createRecordWorkers(systemClock), readRigRows: log.read };
  const by = { id: 'somebody', name: 'Somebody' };
  const accepted = { by: '', keys: [] };
  for (;;) {
    const frozen = await freezeRig(context, { rigId, rigName: rig.name, crewId: rig.crewId, by, note: '', accepted });
    if (!frozen.ok && frozen.error !== 'revision-same') throw new Error(`freezing was refused: ${frozen.error}`);
    await pause(frozen.ok ? 0 : 50);
  }
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
