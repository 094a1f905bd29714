import { createServer, type IncomingMessage } from 'node:http';
import { WebSocket } from 'ws';
import { systemClock } from '#base/clock.ts';
import { createSyncService, type SyncService, type SyncServiceOptions } from '#server/sync/sync-service.ts';
import { syncPath } from '#wire/sync/message.ts';

export interface SyncServer {
  readonly service: SyncService;
  readonly port: number;
  stop(): Promise<void>;
}

/** The sync service alone behind an HTTP server on a free loopback port. Who somebody is stands in a header of their request. */
export async function startSyncServer(
  options: Omit<SyncServiceOptions, 'clock' | 'report'> & Partial<Pick<SyncServiceOptions, 'clock' | 'report'>>,
): Promise<SyncServer> {
  const service = createSyncService({ clock: systemClock, report: () => undefined, ...options });
  const server = createServer((_request, response) => response.writeHead(404).end());
  server.on('upgrade', (request, socket, head) => service.handleUpgrade(request, socket, head) || socket.destroy());
  const port = await new Promise<number>((resolve, reject) => {
    server.once('error', reject);
    server.listen(0, '127.0.0.1', () => {
      const address = server.address();
      resolve(typeof address === 'object' && address ? address.port : 0);
    });
  });
  return {
    service,
    port,
    async stop() {
      await service.drain();
      const closed = new Promise((resolve) => server.close(resolve));
      server.closeAllConnections();
      await closed;
    },
  };
}

export const userOf = (request: IncomingMessage): string => String(request.headers['x-user'] ?? '');

/** Opens a socket to a rig as a page of the server's own would. */
export function openSocket(
  port: number,
  rig: string,
  { user, origin = `http://127.0.0.1:${port}` }: { readonly user: string; readonly origin?: string },
): WebSocket {
  return new WebSocket(`ws://127.0.0.1:${port}${syncPath(rig)}`, {
    origin,
    headers: { 'x-user': user },
    perMessageDeflate: false,
  });
}
