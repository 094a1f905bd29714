import { setTimeout as pause } from 'node:timers/promises';
import * as Y from 'yjs';
import { present } from '#base/assert.ts';
import { HELLO, probeSync } from '#tests/support/sync-probe.ts';
import { openSocket } from '#tests/support/sync-server.ts';

const WRITERS = 2;
const EDITS = 145;
const EDIT_BYTES = 100_000;
const PATIENCE_MS = 20_000;

/**
 * Somebody reads nothing while two others write 29 megabytes between them, which is more than the kernel holds at both ends (10 on
 * Linux) and the server is willing to: whether they are cut off.
 */
export async function fillSlowReader(
  port: number,
  rig: string,
): Promise<{ readonly cutOff: boolean; readonly sent: number }> {
  const socket = openSocket(port, rig, { user: 'slow reader' });
  const slow = probeSync(socket);
  slow.send(HELLO);
  await slow.hear('welcome');
  socket.pause();
  await Promise.all(Array.from({ length: WRITERS }, () => writeMuch(port, rig)));
  // Reads on: whoever was cut off finds the end of the connection behind what had been sent.
  socket.resume();
  const fate = await Promise.race([slow.fate, pause(2_000)]);
  slow.close();
  return { cutOff: fate !== undefined, sent: WRITERS * EDITS * EDIT_BYTES };
}

/** Resolves once everything written is acknowledged. */
async function writeMuch(port: number, rig: string): Promise<void> {
  const writer = probeSync(openSocket(port, rig, { user: 'writer' }));
  writer.send(HELLO);
  await writer.hear('welcome');
  const doc = new Y.Doc();
  let update: Uint8Array | undefined;
  doc.on('update', (bytes) => {
    update = bytes;
  });
  for (let nth = 1; nth <= EDITS; nth++) {
    doc.getMap('large').set(`${doc.clientID}`, `${nth}${'x'.repeat(EDIT_BYTES)}`);
    writer.send({ kind: 'update', counter: nth, bytes: present(update, 'an update') });
  }
  const until = performance.now() + PATIENCE_MS;
  const all = () => writer.heard.some((message) => message.kind === 'ack' && message.counter === EDITS);
  while (!all() && performance.now() < until) await pause(20);
  writer.close();
}
