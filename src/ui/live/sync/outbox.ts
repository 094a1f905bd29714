import * as Y from 'yjs';
import { present } from '#base/assert.ts';
import { CAPS } from '#wire/caps.ts';

/** An edit of mine that the server has not acknowledged. */
export interface Entry {
  readonly counter: number;
  readonly bytes: Uint8Array;
  /** Its key in the copy on this device, once it is written there. */
  key: number | undefined;
}

interface Parcel {
  readonly counter: number;
  readonly bytes: Uint8Array;
}

/** My edits on their way to the server, oldest first. */
export interface Outbox {
  readonly entries: readonly Entry[];
  add(bytes: Uint8Array, key: number | undefined): Entry;
  /** Nothing counts as sent any more: a new connection has begun. */
  restart(): void;
  /** The next update to send, of as many edits as fit; undefined when all are sent; `too-large` when the next does not fit alone. */
  next(): Parcel | 'too-large' | undefined;
  /** All edits as one update made elsewhere. */
  allAs(bytes: Uint8Array): Parcel;
  /** Takes out everything up to `counter` and answers it. */
  acknowledge(counter: number): readonly Entry[];
}

export function createOutbox(): Outbox {
  let entries: Entry[] = [];
  let lastCounter = 0;
  let sentUpTo = 0;

  return {
    get entries() {
      return entries;
    },
    add(bytes, key) {
      const entry = { counter: ++lastCounter, bytes, key };
      entries.push(entry);
      return entry;
    },
    restart() {
      sentUpTo = 0;
    },
    next() {
      const unsent = entries.filter((entry) => entry.counter > sentUpTo);
      const fitting = asManyAsFit(unsent);
      const last = fitting.at(-1);
      if (!last) return unsent.length === 0 ? undefined : 'too-large';
      sentUpTo = last.counter;
      return { counter: last.counter, bytes: merged(fitting) };
    },
    allAs(bytes) {
      sentUpTo = lastCounter;
      return { counter: lastCounter, bytes };
    },
    acknowledge(counter) {
      const done = entries.filter((entry) => entry.counter <= counter);
      if (done.length > 0) entries = entries.filter((entry) => entry.counter > counter);
      return done;
    },
  };
}

function asManyAsFit(entries: readonly Entry[]): readonly Entry[] {
  let size = 0;
  const over = entries.findIndex((entry) => {
    size += entry.bytes.length;
    return size > CAPS.syncUpdate;
  });
  return over < 0 ? entries : entries.slice(0, over);
}

function merged(entries: readonly Entry[]): Uint8Array {
  const list = entries.map((entry) => entry.bytes);
  return list.length === 1 ? present(list[0], 'nothing to merge') : Y.mergeUpdates(list);
}

/**
 * Whether sending `entries` brings the server everything that `doc` holds. It does not when the server has lost what it had
 * acknowledged (a store put back from a backup); then the whole difference has to be sent.
 */
export function outboxCovers(entries: readonly Entry[], doc: Y.Doc, serverHas: ReadonlyMap<number, number>): boolean {
  const parts = entries.map((entry) => Y.parseUpdateMeta(entry.bytes));
  for (const [client, end] of Y.decodeStateVector(Y.encodeStateVector(doc))) {
    let reached = serverHas.get(client) ?? 0;
    for (const { from, to } of parts)
      if ((from.get(client) ?? Number.POSITIVE_INFINITY) <= reached) reached = Math.max(reached, to.get(client) ?? 0);
    if (reached < end) return false;
  }
  return true;
}
