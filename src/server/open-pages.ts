import { existsSync } from 'node:fs';
import { type IncomingMessage, Server } from 'node:http';
import { join } from 'node:path';
import type { Duplex } from 'node:stream';
import { START_SENTENCES } from '#words/start.ts';
import { StartRefused } from './config/start-refused.ts';
import { type ServePages, serveWithPolicy } from './http/serve-pages.ts';

/** Where the pages come from: what `next build` made, or the sources as they are being written. */
export type PagesFrom = 'build' | 'sources';

export interface Pages {
  readonly serve: ServePages;
  /** Takes an upgrade that is not ours: while developing, the pages have a socket of their own. */
  upgrade(request: IncomingMessage, socket: Duplex, head: Buffer): void;
  close(): Promise<void>;
}

export interface PagesOptions {
  readonly root: string;
  readonly from: PagesFrom;
  readonly hostOf: (request: IncomingMessage) => string;
}

/** Opens the pages. Next gets a server that never listens: on ours it would end the sockets of the sync service as unknown. */
export async function openPages({ root, from, hostOf }: PagesOptions): Promise<Pages> {
  if (from === 'build' && !existsSync(join(root, '.next', 'BUILD_ID')))
    throw new StartRefused(START_SENTENCES.notBuilt);
  const { default: next } = await import('next');
  const decoy = new Server();
  const app = next({ dev: from === 'sources', dir: root, httpServer: decoy });
  await app.prepare();
  const handle = app.getRequestHandler();
  const serve: ServePages = (request, response) => handle(request, response);
  return {
    serve: from === 'build' ? serveWithPolicy(serve, hostOf) : serve,
    upgrade: (request, socket, head) => {
      if (!decoy.emit('upgrade', request, socket, head)) socket.destroy();
    },
    close: () => app.close(),
  };
}
