import type { WebSocket } from 'ws';
import * as Y from 'yjs';
import { encodeClientMessage } from '#wire/sync/client-message.ts';
import { type ClientMessage, type ServerMessage, SYNC_VERSION } from '#wire/sync/message.ts';
import { decodeServerMessage } from '#wire/sync/server-message.ts';

/** How a hand-made socket fared. */
export type Fate =
  | { readonly kind: 'closed'; readonly code: number; readonly reason: string }
  | { readonly kind: 'refused'; readonly status: number };

/** A hand-made client of the sync protocol: sends what it is told to, keeps what it hears. */
export interface SyncProbe {
  readonly heard: readonly ServerMessage[];
  send(message: ClientMessage | Uint8Array): void;
  /** The next message of a kind, heard already or to come; undefined once the socket is closed. */
  hear<Kind extends ServerMessage['kind']>(kind: Kind): Promise<Extract<ServerMessage, { kind: Kind }> | undefined>;
  /** How it ended. */
  readonly fate: Promise<Fate>;
  close(): void;
}

export const HELLO: ClientMessage = { kind: 'hello', version: SYNC_VERSION, have: Y.encodeStateVector(new Y.Doc()) };

/** An update that any document takes. */
export function someUpdate(): Uint8Array {
  const doc = new Y.Doc();
  doc.getMap('cells').set('probe/note', 'written by hand');
  return Y.encodeStateAsUpdate(doc);
}

export function probeSync(socket: WebSocket): SyncProbe {
  const heard: ServerMessage[] = [];
  const waiting = new Set<() => void>();
  const wake = () => {
    for (const check of [...waiting]) check();
  };
  let ended = false;
  socket.binaryType = 'nodebuffer';
  const opened = new Promise<void>((resolve) => socket.once('open', () => resolve()));
  socket.on('message', (data) => {
    const message = decodeServerMessage(new Uint8Array(data as Buffer));
    if (!message.ok) throw new Error('the server said something that is no message');
    heard.push(message.value);
    wake();
  });
  const fate = new Promise<Fate>((resolve) => {
    socket.once('unexpected-response', (_request, response) => {
      resolve({ kind: 'refused', status: response.statusCode ?? 0 });
      socket.terminate();
    });
    socket.once('close', (code, reason) => {
      resolve({ kind: 'closed', code, reason: reason.toString() });
      ended = true;
      wake();
    });
  });
  // What went wrong is told by how it ends.
  socket.on('error', () => undefined);
  return {
    heard,
    fate,
    send: (message) => {
      const frame = message instanceof Uint8Array ? message : encodeClientMessage(message);
      void opened.then(() => socket.send(frame));
    },
    hear: (kind) =>
      new Promise((resolve) => {
        const check = () => {
          const found = heard.find((message) => message.kind === kind);
          if (!found && !ended) return;
          waiting.delete(check);
          resolve(found as Extract<ServerMessage, { kind: typeof kind }> | undefined);
        };
        waiting.add(check);
        check();
      }),
    close: () => socket.terminate(),
  };
}
