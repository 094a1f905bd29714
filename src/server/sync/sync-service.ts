import type { IncomingMessage } from 'node:http';
import type { Duplex } from 'node:stream';
import { WebSocketServer } from 'ws';
import type * as Y from 'yjs';
import type { Clock } from '#base/clock.ts';
import type { Result } from '#base/result.ts';
import { CAPS } from '#wire/caps.ts';
import { CLOSE } from '#wire/sync/close-code.ts';
import type { Connection } from './connection.ts';
import { Hub, type HubStats, type WriteTrouble } from './hub.ts';
import { originAllowed } from './origin-allowed.ts';
import type { Pass } from './pass.ts';
import { noProbe, type Probe } from './probe.ts';
import type { UpdateLog } from './update-log.ts';
import { wsPeer } from './ws-peer.ts';

export interface SyncServiceOptions {
  readonly log: UpdateLog;
  readonly clock: Clock;
  /** The first part of the path of its sockets, `sync` unless another is named: a service serves one kind of document, below `rig`. */
  readonly door?: string;
  /**
   * Who this request is and what they may do on the rig, asked when they connect and again at every recheck. A foreign rig answers the
   * same as a missing one. Throws when the store cannot say; the socket is then told to come back.
   */
  readonly authorise: (request: IncomingMessage, rig: string) => Promise<Pass | 'signed-out' | 'no-such-rig'>;
  readonly report: (what: string, error: Error) => void;
  /** Origins allowed besides the one the request itself was sent to, such as `https://rig.example`. */
  readonly origins?: readonly string[];
  /** Updates after which a checkpoint is built; 5,000 take 85 ms to read back. */
  readonly checkpointRows?: number;
  /** How long log rows stay once a checkpoint holds them; without it for ever. */
  readonly keepRowsMs?: number;
  readonly idleMs?: number;
  /** How often every socket is asked for its pass again, so that none outlives its session. */
  readonly recheckMs?: number;
  readonly probe?: Probe;
}

export interface SyncService {
  /** Takes the upgrade of `/<door>/<rig>`; false when the path is another's business and nothing was done. */
  handleUpgrade(request: IncomingMessage, socket: Duplex, head: Buffer): boolean;
  /**
   * Reads a rig as committed, from memory or from the log. `use` must not write to the document nor keep it. Undefined when there is
   * no such rig.
   */
  readRig<T>(rig: string, use: (doc: Y.Doc, seq: number) => T): Promise<T | undefined>;
  /** Writes to a rig by the path that everybody's edits take; answers the sequence number once it is committed. */
  applyUpdate(rig: string, author: string, update: Uint8Array): Promise<Result<number, WriteTrouble>>;
  /**
   * Asks for the pass of every matching socket again, and closes it or changes its role: to be called whenever a session ends, a
   * membership ends or changes its role, or a rig is removed. Resolves when it is done.
   */
  recheck(which: { readonly user?: string; readonly rig?: string }): Promise<void>;
  /** Takes no more sockets or edits, flushes what is on its way to the log, closes. */
  drain(): Promise<void>;
  stats(): HubStats;
}

interface Attended {
  readonly request: IncomingMessage;
  readonly rig: string;
  readonly connection: Connection;
}

/** The sync service of one process and one kind of document: sockets on `/<door>/<rig>`, edits into the log. */
export function createSyncService(options: SyncServiceOptions): SyncService {
  const { clock, authorise, report } = options;
  const door = options.door ?? 'sync';
  const hub = new Hub({
    log: options.log,
    clock,
    turn: () => new Promise((resolve) => setImmediate(resolve)),
    report,
    probe: options.probe ?? noProbe,
    checkpointRows: options.checkpointRows ?? 5_000,
    keepRowsMs: options.keepRowsMs,
    idleMs: options.idleMs ?? 30_000,
  });
  const sockets = new WebSocketServer({
    noServer: true,
    clientTracking: false,
    maxPayload: CAPS.syncFrame,
    // Compressing each message costs six times the CPU and turns a median of 20 ms into one of seconds.
    perMessageDeflate: false,
  });
  const attended = new Set<Attended>();
  let rechecks = 0;
  let draining = false;
  let stopTimer: (() => void) | undefined;

  /** The pass, asked for again if somebody lost something while it was being asked for. */
  const passOf = async (request: IncomingMessage, rig: string): Promise<Pass | 'signed-out' | 'no-such-rig'> => {
    const before = rechecks;
    const pass = await authorise(request, rig);
    return before === rechecks ? pass : passOf(request, rig);
  };
  const passOrTrouble = (request: IncomingMessage, rig: string) =>
    passOf(request, rig).catch((error: unknown) => {
      report(`asking what a person may do on rig ${rig}`, error instanceof Error ? error : new Error(String(error)));
      return 'try-again' as const;
    });

  const recheckOne = async ({ request, rig, connection }: Attended): Promise<void> => {
    const pass = await passOrTrouble(request, rig);
    if (connection.closed) return;
    if (typeof pass === 'string') connection.close(REFUSALS[pass]);
    else if (pass.user !== connection.pass.user) connection.close(CLOSE.tryAgain);
    else connection.setRole(pass.role);
  };
  const recheckAll = async (which: (one: Attended) => boolean): Promise<void> => {
    rechecks += 1;
    await Promise.all([...attended].filter(which).map(recheckOne));
  };
  const keepRechecking = (): void => {
    stopTimer ??= clock.after(options.recheckMs ?? 60_000, () => {
      void recheckInTurn().then(() => {
        stopTimer = undefined;
        if (attended.size > 0 && !draining) keepRechecking();
      });
    });
  };
  /** One after the other: a burst of look-ups would hold up everybody's edits. */
  const recheckInTurn = async (): Promise<void> => {
    for (const one of [...attended]) if (!one.connection.closed) await recheckOne(one);
  };

  const attend = async (request: IncomingMessage, rig: string, socket: WebSocketLike): Promise<void> => {
    const peer = wsPeer(socket, clock);
    const pass = await passOrTrouble(request, rig);
    if (typeof pass === 'string') return peer.close(REFUSALS[pass]);
    const connection = hub.connect(rig, pass, peer);
    const one = { request, rig, connection };
    attended.add(one);
    keepRechecking();
    peer.listen({
      frame: (frame) => connection.receive(frame),
      text: () => connection.close(CLOSE.malformed),
      gone: () => {
        attended.delete(one);
        connection.left();
      },
    });
  };

  return {
    handleUpgrade(request, socket, head) {
      const rig = rigOfPath(door, request.url);
      if (rig === undefined) return false;
      if (draining) refuseUpgrade(socket, '503 Service Unavailable');
      else if (!originAllowed(request.headers, options.origins ?? [])) refuseUpgrade(socket, '403 Forbidden');
      else sockets.handleUpgrade(request, socket, head, (open) => void attend(request, rig, open));
      return true;
    },
    readRig: (rig, use) => hub.read(rig, use),
    applyUpdate: (rig, author, update) => hub.applyUpdate(rig, author, update),
    recheck: (which) =>
      recheckAll(
        ({ rig, connection }) =>
          (which.user ?? connection.pass.user) === connection.pass.user && (which.rig ?? rig) === rig,
      ),
    async drain() {
      draining = true;
      stopTimer?.();
      await hub.drain();
    },
    stats: () => hub.stats(),
  };
}

type WebSocketLike = Parameters<typeof wsPeer>[0];

const REFUSALS = {
  'signed-out': CLOSE.signedOut,
  'no-such-rig': CLOSE.noSuchRig,
  'try-again': CLOSE.tryAgain,
} as const;

function rigOfPath(door: string, url: string | undefined): string | undefined {
  const [, first, id = '', ...more] = (url ?? '').replace(/\?.*$/s, '').split('/');
  if (first !== door || more.length > 0 || id === '' || id.length > 200) return undefined;
  try {
    return decodeURIComponent(id);
  } catch {
    // A percent sign that means nothing: no rig has such an id, and the answer is that of any rig that is not there.
    return id;
  }
}

function refuseUpgrade(socket: Duplex, status: string): void {
  socket.on('error', () => socket.destroy());
  socket.end(`HTTP/1.1 ${status}\r\nConnection: close\r\nContent-Length: 0\r\n\r\n`);
}
