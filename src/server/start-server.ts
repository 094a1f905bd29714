import { createServer, type Server } from 'node:http';
import type { Clock } from '#base/clock.ts';
import type { MakeId } from '#base/random-id.ts';
import { CAPS } from '#wire/caps.ts';
import { START_SENTENCES } from '#words/start.ts';
import type { Revoke } from './access/revocation.ts';
import { type Auth, createAuth, type Scheme } from './auth/create-auth.ts';
import { readSecret } from './auth/read-secret.ts';
import { authoriseDrafts, authoriseRigs } from './authorise.ts';
import type { Config } from './config/read-config.ts';
import { StartRefused } from './config/start-refused.ts';
import { openStore } from './db/open-store.ts';
import type { Store } from './db/store.ts';
import { createGdtfWorkers } from './gdtf/gdtf-workers.ts';
import { createHandoverWorkers } from './handover/handover-workers.ts';
import type { Route } from './http/api-request.ts';
import { createHandler } from './http/create-handler.ts';
import { reachOf } from './http/reach.ts';
import type { Log } from './log.ts';
import { openPages, type Pages, type PagesFrom } from './open-pages.ts';
import { createRecordWorkers } from './record/record-workers.ts';
import { createRoutes } from './routes.ts';
import type { Probe } from './sync/probe.ts';
import { createSqlLog, DRAFT_TABLES, RIG_TABLES } from './sync/sql-log.ts';
import { createSyncService, type SyncService } from './sync/sync-service.ts';
import { seedDemo } from './tasks/seed-demo.ts';
import { sweepExpired } from './tasks/sweep-expired.ts';

export interface ServerOptions {
  readonly config: Config;
  /** The program's own folder. */
  readonly root: string;
  readonly version: string;
  /** `none` serves the API and the sockets alone. */
  readonly pages: PagesFrom | 'none';
  readonly clock: Clock;
  readonly makeId: MakeId;
  readonly log: Log;
  /** Where a proof may stop the process. */
  readonly probe?: Probe;
}

export interface RunningServer {
  readonly port: number;
  readonly store: Store;
  readonly sync: SyncService;
  /** The same service for drafts of fixture types. */
  readonly draftSync: SyncService;
  /** Every address below /api. */
  readonly routes: readonly Route[];
  /** Takes nothing new, finishes what is under way, lets go of the store. */
  stop(): Promise<void>;
}

const SWEEP_MS = 6 * 60 * 60 * 1000;
const LAST_REQUESTS_MS = 5_000;
/** The largest file has its own time to arrive; the handler cuts off everything else long before. */
const LONGEST_REQUEST_MS = Math.max(CAPS.typeFileMs, CAPS.archiveFileMs) + 10_000;

/** Starts the whole server in this process. Throws `StartRefused` when the person who starts it has to mend something first. */
export async function startServer(options: ServerOptions): Promise<RunningServer> {
  const { config, root, log } = options;
  const onLost = (error: Error) => log.trouble('a connection to the store broke', error);
  const store = await openStore(config.store, { root, onLost });
  try {
    return await startOn(store, options);
  } catch (error) {
    await store.close();
    throw error;
  }
}

async function startOn(store: Store, options: ServerOptions): Promise<RunningServer> {
  const { config, root, clock, log } = options;
  const report = (what: string, error: Error) => log.trouble(what, error);
  const auths = await openAuths(store, config);
  const { sync, draftSync } = openSyncs(store, auths, options);
  const docs = { readRigDoc: sync.readRig, readDraftDoc: draftSync.readRig };
  const record = createRecordWorkers(clock);
  const readRigRows = createSqlLog(store.sql, RIG_TABLES).read;
  const own = { store, clock, makeId: options.makeId, revoke: revokeOn(sync, draftSync), record, readRigRows };
  const tasks = { ...own, ...docs };
  if (config.demo) await seedDemo({ ...tasks, applyUpdate: sync.applyUpdate });
  const pages =
    options.pages === 'none'
      ? undefined
      : await openPages({ root, from: options.pages, hostOf: (request) => reachOf(request, config).host });
  const gdtf = createGdtfWorkers(clock);
  const handovers = createHandoverWorkers(clock);
  const routes = createRoutes({ tasks, sync, gdtf, handovers, version: options.version, config, report });
  const handler = createHandler({
    routes,
    auths,
    reach: config,
    clock,
    pages: pages?.serve,
    report,
  });
  const server = createServer({ requestTimeout: LONGEST_REQUEST_MS, headersTimeout: 15_000 }, handler);
  takeUpgrades(server, [sync, draftSync], pages);
  answerUnreadable(server);
  const port = await listen(server, config);
  const stopSweeping = keepSweeping(options, store);
  return {
    port,
    store,
    sync,
    draftSync,
    routes,
    stop: async () => {
      stopSweeping();
      const closed = new Promise((resolve) => server.close(resolve));
      server.closeIdleConnections();
      await Promise.all([sync.drain(), draftSync.drain()]);
      await Promise.race([closed, new Promise<void>((resolve) => clock.after(LAST_REQUESTS_MS, resolve))]);
      server.closeAllConnections();
      gdtf.close();
      handovers.close();
      record.close();
      await pages?.close();
      await store.close();
    },
  };
}

async function openAuths(store: Store, config: Config): Promise<Readonly<Record<Scheme, Auth>>> {
  const secret = config.authSecret ?? (await readSecret(store));
  const { attemptsPerMinute } = config;
  const of = (scheme: Scheme) => createAuth({ store, secret, scheme, attemptsPerMinute });
  return { http: of('http'), https: of('https') };
}

function openSyncs(
  store: Store,
  auths: Readonly<Record<Scheme, Auth>>,
  { config, clock, log, probe }: ServerOptions,
): { readonly sync: SyncService; readonly draftSync: SyncService } {
  const who = { store, auths, reach: config };
  const common = {
    clock,
    report: (what: string, error: Error) => log.trouble(what, error),
    origins: config.publicUrl ? [config.publicUrl.origin] : [],
    ...(probe ? { probe } : {}),
  };
  return {
    sync: createSyncService({ ...common, log: createSqlLog(store.sql, RIG_TABLES), authorise: authoriseRigs(who) }),
    draftSync: createSyncService({
      ...common,
      door: 'sync-draft',
      log: createSqlLog(store.sql, DRAFT_TABLES),
      authorise: authoriseDrafts(who),
    }),
  };
}

/** A person's rights are asked for again at every socket of theirs, those of a rig or a draft where its sockets are. */
function revokeOn(sync: SyncService, draftSync: SyncService): Revoke {
  return async (which) => {
    if ('rig' in which) return sync.recheck(which);
    if ('draft' in which) return draftSync.recheck({ rig: which.draft });
    await Promise.all([sync.recheck(which), draftSync.recheck(which)]);
  };
}

function takeUpgrades(server: Server, syncs: readonly SyncService[], pages: Pages | undefined): void {
  server.on('upgrade', (request, socket, head) => {
    if (syncs.some((sync) => sync.handleUpgrade(request, socket, head))) return;
    if (pages) pages.upgrade(request, socket, head);
    else socket.destroy();
  });
}

/** Bytes that are no HTTP at all. */
function answerUnreadable(server: Server): void {
  server.on('clientError', (_error, socket) => {
    if (!socket.writable) return void socket.destroy();
    socket.end('HTTP/1.1 400 Bad Request\r\nConnection: close\r\nContent-Length: 0\r\n\r\n');
  });
}

function listen(server: Server, { host, port }: Config): Promise<number> {
  return new Promise((resolve, reject) => {
    server.once('error', (error: NodeJS.ErrnoException) => {
      const taken = error.code === 'EADDRINUSE';
      reject(taken ? new StartRefused(START_SENTENCES.portTaken(host, port), { cause: error }) : error);
    });
    server.listen(port, host, () => {
      const address = server.address();
      resolve(typeof address === 'object' && address ? address.port : port);
    });
  });
}

function keepSweeping({ clock, log }: ServerOptions, store: Store): () => void {
  const sweep = () => {
    sweepExpired({ store, clock }).catch((error: Error) => log.trouble('sweeping what has expired', error));
    cancel = clock.after(SWEEP_MS, sweep);
  };
  let cancel: () => void = () => undefined;
  sweep();
  return () => cancel();
}
