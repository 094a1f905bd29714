// Run as a process of its own, so that what these people burn is not taken from those who are measured.

import { setTimeout as pause } from 'node:timers/promises';
import * as Y from 'yjs';
import { present } from '#base/assert.ts';
import { type Rng, seededRng } from '#base/rng.ts';
import { readOrders } from '#tests/support/serve-port.ts';
import { HELLO, probeSync } from '#tests/support/sync-probe.ts';
import { openSocket } from '#tests/support/sync-server.ts';

export interface AwayOrders {
  readonly port: number;
  readonly rig: string;
  readonly people: number;
  /** Of each, made without a network. */
  readonly edits: number;
  /** The stretch in which all come back. */
  readonly withinMs: number;
  readonly seed: number;
}

const { port, rig, people, edits, withinMs, seed } = readOrders<AwayOrders>();
const rng = seededRng(seed);
const away = Array.from({ length: people }, (_, nth) => editsOf(nth, rng));
await Promise.all(away.map(async (bytes, nth) => comeBack(nth, bytes, rng.int(withinMs))));
console.log(JSON.stringify({ lost: people * edits - (await countEdits()) }));
process.exit(0);

/** What a page that was offline has to send: all its edits as one update. */
function editsOf(nth: number, random: Rng): Uint8Array {
  const doc = new Y.Doc();
  for (let made = 0; made < edits; made++)
    doc.transact(() => {
      doc.getMap('cells').set(`row ${random.int(500)}/field ${random.int(12)}`, made);
      doc.getMap('marks').set(`${nth}-${made}`, true);
    });
  return Y.encodeStateAsUpdate(doc);
}

/** Resolves once everything is acknowledged; the socket stays open, and what others do is sent to it. */
async function comeBack(nth: number, bytes: Uint8Array, afterMs: number): Promise<void> {
  await pause(afterMs);
  const socket = openSocket(port, rig, { user: `away ${nth}` });
  const probe = probeSync(socket);
  probe.send(HELLO);
  present(await probe.hear('welcome'), `person ${nth} was not let in`);
  probe.send({ kind: 'update', counter: 1, bytes });
  present(await probe.hear('ack'), `person ${nth} was not told that their edits are saved`);
}

/** As somebody sees it who comes new. */
async function countEdits(): Promise<number> {
  const probe = probeSync(openSocket(port, rig, { user: 'reader' }));
  probe.send(HELLO);
  const doc = new Y.Doc();
  Y.applyUpdate(doc, present(await probe.hear('welcome'), 'a reader was not let in').missing);
  return doc.getMap('marks').size;
}
