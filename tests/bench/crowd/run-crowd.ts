import { setTimeout as pause } from 'node:timers/promises';
import type { WebSocket } from 'ws';
import * as Y from 'yjs';
import { present } from '#base/assert.ts';
import { type Rng, seededRng } from '#base/rng.ts';
import { openSocket } from '#tests/support/sync-server.ts';
import { decodeClientMessage, encodeClientMessage } from '#wire/sync/client-message.ts';
import { SYNC_VERSION } from '#wire/sync/message.ts';
import { decodeServerMessage } from '#wire/sync/server-message.ts';

export interface Crowd {
  readonly people: number;
  /** How many of them edit. */
  readonly writers: number;
  /** Of all writers together. */
  readonly editsPerSecond: number;
  readonly seconds: number;
}

export interface CrowdTimes {
  /** From sending an edit to its arrival at one other person, each, in milliseconds, ascending. */
  readonly seen: readonly number[];
  /** From sending an edit to its acknowledgement. */
  readonly acked: readonly number[];
  readonly sent: number;
}

const WARM_UP_MS = 1_500;
/** How long the last edits may take to arrive. */
const LAST_MS = 60_000;

/**
 * A crowd on one rig over real sockets. The people are sockets only: they make edits of one cell, and note when those of others
 * arrive; what is measured is the server. `relay` expects messages to come as they were sent.
 */
export async function runCrowd(port: number, rig: string, crowd: Crowd, manner: 'sync' | 'relay'): Promise<CrowdTimes> {
  const rng = seededRng(1);
  const sentAt = new Map<string, number>();
  const seen: number[] = [];
  const acked: number[] = [];
  let counting = false;
  const people = await Promise.all(
    Array.from({ length: crowd.people }, (_, nth) => openPerson(port, rig, nth, { manner, rng })),
  );
  for (const person of people) {
    person.onSeen = (bytes) => {
      const at = sentAt.get(nameOf(bytes));
      if (at !== undefined) seen.push(performance.now() - at);
    };
    person.onAcked = (ms) => counting && acked.push(ms);
  }
  let sent = 0;
  const everyMs = (1000 * crowd.writers) / crowd.editsPerSecond;
  const timers = people.slice(0, crowd.writers).map(async (person) => {
    await pause(rng.next() * everyMs);
    return setInterval(() => {
      const bytes = person.edit();
      if (!counting) return;
      sent += 1;
      sentAt.set(nameOf(bytes), performance.now());
    }, everyMs);
  });
  await pause(WARM_UP_MS);
  counting = true;
  await pause(crowd.seconds * 1000);
  counting = false;
  for (const timer of timers) clearInterval(await timer);
  const expected = sent * (crowd.people - 1);
  for (let waited = 0; seen.length < expected && waited < LAST_MS; waited += 50) await pause(50);
  for (const person of people) person.close();
  if (seen.length !== expected) throw new Error(`${seen.length} arrivals of ${expected}`);
  return { seen: seen.sort((a, b) => a - b), acked: acked.sort((a, b) => a - b), sent };
}

export const percentile = (ascending: readonly number[], part: number): number =>
  present(ascending[Math.min(ascending.length - 1, Math.floor(ascending.length * part))], 'nothing was measured');

/** Tells one edit from all others: its bytes hold its client and its clock. */
const nameOf = (bytes: Uint8Array): string =>
  Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).toString('latin1');

interface Person {
  onSeen: (bytes: Uint8Array) => void;
  onAcked: (ms: number) => void;
  /** Edits a cell, sends it, answers the update. */
  edit(): Uint8Array;
  close(): void;
}

interface PersonOptions {
  readonly manner: 'sync' | 'relay';
  readonly rng: Rng;
}

async function openPerson(port: number, rig: string, nth: number, { manner, rng }: PersonOptions): Promise<Person> {
  const socket = openSocket(port, rig, { user: `person ${nth}` });
  const doc = new Y.Doc();
  doc.clientID = nth + 1;
  let update: Uint8Array = new Uint8Array(0);
  doc.on('update', (bytes: Uint8Array) => {
    update = bytes;
  });
  const flying: { readonly counter: number; readonly at: number }[] = [];
  let counter = 0;
  const person: Person = {
    onSeen: () => undefined,
    onAcked: () => undefined,
    edit() {
      doc.getMap('cells').set(`row ${rng.int(500)}/field ${rng.int(12)}`, `${counter}`);
      flying.push({ counter: ++counter, at: performance.now() });
      socket.send(encodeClientMessage({ kind: 'update', counter, bytes: update }));
      return update;
    },
    close: () => socket.terminate(),
  };
  const acknowledged = (upTo: number) => {
    while (flying[0] && flying[0].counter <= upTo)
      person.onAcked(performance.now() - present(flying.shift(), 'one').at);
  };
  await opened(socket);
  if (manner === 'relay') socket.on('message', (frame: Buffer) => hearRelayed(frame, person));
  else await greet(socket, (frame) => hear(frame, person, acknowledged));
  return person;
}

function hearRelayed(frame: Buffer, person: Person): void {
  const message = decodeClientMessage(frame);
  if (message.ok && message.value.kind === 'update') person.onSeen(message.value.bytes);
}

function hear(frame: Buffer, person: Person, acknowledged: (upTo: number) => void): void {
  const message = decodeServerMessage(frame);
  if (!message.ok) throw new Error('no message');
  if (message.value.kind === 'updates') for (const bytes of message.value.list) person.onSeen(bytes);
  if (message.value.kind === 'ack') acknowledged(message.value.counter);
}

const opened = (socket: WebSocket): Promise<void> =>
  new Promise((resolve, reject) => {
    socket.once('open', () => resolve());
    socket.once('error', reject);
  });

function greet(socket: WebSocket, then: (frame: Buffer) => void): Promise<void> {
  socket.send(encodeClientMessage({ kind: 'hello', version: SYNC_VERSION, have: Uint8Array.of(0) }));
  return new Promise((resolve) => {
    socket.on('message', (frame: Buffer) => {
      resolve();
      then(frame);
    });
  });
}
