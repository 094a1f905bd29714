import { describe, expect, it } from 'vitest';
import * as Y from 'yjs';
import { CAPS } from '#wire/caps.ts';
import { createOutbox, outboxCovers } from './outbox.ts';

/** A document and the updates it makes. */
function edited() {
  const doc = new Y.Doc();
  const updates: Uint8Array[] = [];
  doc.on('update', (bytes) => updates.push(bytes));
  const set = (key: string, value: string | number) => doc.getMap('cells').set(key, value);
  return { doc, updates, set };
}

const reach = (doc: Y.Doc) => Y.decodeStateVector(Y.encodeStateVector(doc));

describe('outbox', () => {
  it('sends many edits as one, under the counter of the last, and each once', () => {
    const { doc, updates, set } = edited();
    for (let nth = 0; nth < 20; nth++) set(`c${nth % 3}`, nth);
    const outbox = createOutbox();
    for (const bytes of updates) outbox.add(bytes, undefined);
    const parcel = outbox.next();
    if (!parcel || parcel === 'too-large') throw new Error('nothing to send');
    expect(parcel.counter).toBe(20);
    const other = new Y.Doc();
    Y.applyUpdate(other, parcel.bytes);
    expect(other.getMap('cells').toJSON()).toEqual(doc.getMap('cells').toJSON());
    expect(outbox.next()).toBeUndefined();
    outbox.restart();
    expect(outbox.next()).toEqual(parcel);
  });

  it('takes out what is acknowledged, and no more', () => {
    const outbox = createOutbox();
    for (let nth = 0; nth < 5; nth++) outbox.add(Uint8Array.of(0, 0), nth);
    expect(outbox.acknowledge(3).map((entry) => entry.key)).toEqual([0, 1, 2]);
    expect(outbox.entries.map((entry) => entry.counter)).toEqual([4, 5]);
    expect(outbox.acknowledge(3)).toEqual([]);
  });

  it('sends as many as fit, and says when one does not fit alone', () => {
    const half = new Uint8Array(CAPS.syncUpdate / 2 + 1);
    const outbox = createOutbox();
    outbox.add(half, undefined);
    outbox.add(half, undefined);
    expect(outbox.next()).toMatchObject({ counter: 1 });
    expect(outbox.next()).toMatchObject({ counter: 2 });
    outbox.add(new Uint8Array(CAPS.syncUpdate + 1), undefined);
    expect(outbox.next()).toBe('too-large');
    expect(outbox.allAs(Uint8Array.of(0, 0))).toEqual({ counter: 3, bytes: Uint8Array.of(0, 0) });
    expect(outbox.next()).toBeUndefined();
  });

  it('knows when what waits is all the server lacks, and when the server has lost more', () => {
    const { doc, updates, set } = edited();
    for (let nth = 0; nth < 6; nth++) set('c', nth);
    const outbox = createOutbox();
    for (const bytes of updates.slice(4)) outbox.add(bytes, undefined);
    const server = new Y.Doc();
    expect(outboxCovers(outbox.entries, doc, reach(server))).toBe(false);
    for (const bytes of updates.slice(0, 3)) Y.applyUpdate(server, bytes);
    expect(outboxCovers(outbox.entries, doc, reach(server))).toBe(false);
    Y.applyUpdate(server, updates[3] ?? new Uint8Array());
    expect(outboxCovers(outbox.entries, doc, reach(server))).toBe(true);
    expect(outboxCovers([], server, reach(server))).toBe(true);
  });
});
