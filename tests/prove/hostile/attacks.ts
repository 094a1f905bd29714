import type { WebSocket } from 'ws';
import * as Y from 'yjs';
import { type Rng, seededRng } from '#base/rng.ts';
import { openSocket } from '#tests/support/sync-server.ts';
import { encodeClientMessage } from '#wire/sync/client-message.ts';
import { SYNC_VERSION } from '#wire/sync/message.ts';

/** What an attacker does, until it is cut off. */
export const ATTACKS = {
  garbage: (on) => join(on, (socket) => socket.send(noise(on.rng, 2_000))),
  'garbage for a hello': (on) => bare(on, (socket) => socket.send(noise(on.rng, 200))),
  'a message of 100 MiB': (on) => join(on, (socket) => socket.send(new Uint8Array(100 * 2 ** 20))),
  'a message of 100 MiB in pieces': (on) => join(on, sendPieces),
  '100,000 pings a second': (on) => join(on, (socket) => keepSending(socket, encodeClientMessage({ kind: 'ping' }))),
  '100,000 edits a second': (on) => join(on, (socket) => keepSending(socket, edit())),
  'an update that is none': (on) => join(on, (socket) => socket.send(updateOf(noise(on.rng, 5_000)))),
  'an update of four million parts': (on) => join(on, (socket) => socket.send(updateOf(manyParts()))),
  'a hello that holds millions of clients': (on) =>
    bare(on, (socket) => socket.send(hello(new Uint8Array(7 * 2 ** 20).fill(1)))),
  'the hello of another version': (on) => bare(on, (socket) => socket.send(Uint8Array.of(0, 120, 1, 2))),
  'an edit before the hello': (on) => bare(on, (socket) => socket.send(edit())),
  'words instead of bytes': (on) => bare(on, (socket) => socket.send('let me in')),
  'a rig that is not theirs': (on) => bare({ ...on, rig: 'somebody-elses' }, (socket) => socket.send(hello())),
  'a rig with a strange name': (on) =>
    bare({ ...on, rig: "%2e%2e/'; drop table rig" }, (socket) => socket.send(hello())),
} satisfies Record<string, (on: Target) => WebSocket>;

export interface Target {
  readonly port: number;
  readonly rig: string;
  readonly rng: Rng;
  /** Making a hundred megabytes ready takes the attacker time, which is not the server's. */
  readonly underWay: () => void;
}

export type AttackName = keyof typeof ATTACKS;

/** Carries one attack out; milliseconds from when it was under way to being cut off. */
export function attack(name: AttackName, target: Omit<Target, 'rng' | 'underWay'>): Promise<number> {
  return new Promise((resolve) => {
    let began = performance.now();
    const underWay = () => {
      began = performance.now();
    };
    const socket = ATTACKS[name]({ ...target, rng: seededRng(1), underWay });
    socket.on('error', () => undefined);
    socket.once('close', () => resolve(performance.now() - began));
  });
}

function bare({ port, rig, underWay }: Target, act: (socket: WebSocket) => void): WebSocket {
  const socket = openSocket(port, rig, { user: 'attacker' });
  socket.once('open', () => {
    act(socket);
    underWay();
  });
  return socket;
}

function join(target: Target, act: (socket: WebSocket) => void): WebSocket {
  const socket = bare(target, () => socket.send(hello()));
  socket.once('message', () => {
    act(socket);
    target.underWay();
  });
  return socket;
}

const hello = (have: Uint8Array = Uint8Array.of(0)): Uint8Array =>
  encodeClientMessage({ kind: 'hello', version: SYNC_VERSION, have });

const updateOf = (bytes: Uint8Array): Uint8Array => encodeClientMessage({ kind: 'update', counter: 1, bytes });

const noise = (rng: Rng, length: number): Uint8Array => Uint8Array.from({ length }, () => rng.int(256));

function edit(): Uint8Array {
  const doc = new Y.Doc();
  doc.getMap('cells').set('a', 1);
  return updateOf(Y.encodeStateAsUpdate(doc));
}

/** One client (1) with as many collected ranges (0) of length 1 as fit. */
function manyParts(): Uint8Array {
  const bytes = new Uint8Array(8 * 2 ** 20 - 1_000);
  for (let at = 0; at < bytes.length; at += 2) bytes[at + 1] = 1;
  // The number of parts, four million, in five bytes.
  bytes.set([1, 0x80, 0x92, 0xf4, 0x81, 0x00, 5, 0]);
  return bytes;
}

function keepSending(socket: WebSocket, frame: Uint8Array): void {
  const turn = () => {
    for (let nth = 0; nth < 1_000 && socket.readyState === socket.OPEN; nth++) socket.send(frame);
    if (socket.readyState === socket.OPEN) setTimeout(turn, 10);
  };
  turn();
}

function sendPieces(socket: WebSocket): void {
  const piece = new Uint8Array(2 ** 20);
  for (let nth = 0; nth < 100; nth++) socket.send(piece, { fin: nth === 99 });
}
