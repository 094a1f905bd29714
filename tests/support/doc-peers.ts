import * as Y from 'yjs';
import type { Rng } from '#base/rng.ts';
import { createRigDoc } from '#document/schema/rig-doc.ts';

/** Some documents of one rig on a network made of queues: nothing arrives until it is delivered. */
export interface DocPeers {
  readonly docs: readonly Y.Doc[];
  /** Delivers one waiting update to one peer, chosen by chance, perhaps twice; false when nothing waits. */
  deliverOne(rng: Rng): boolean;
  /** Delivers all that waits for one peer. */
  deliverTo(peer: number): void;
  deliverAll(): void;
}

/**
 * `clients` gives each document its client id: of two writes at once under one key the one of the higher id stays. `made` is
 * the document they all have from the start.
 */
export function createDocPeers(clients: readonly number[], made: Y.Doc = createRigDoc()): DocPeers {
  const first = Y.encodeStateAsUpdate(made);
  const docs = clients.map((client) => {
    const doc = new Y.Doc();
    Y.applyUpdate(doc, first, 'network');
    doc.clientID = client;
    return doc;
  });
  const queues: Uint8Array[][] = docs.map(() => []);
  docs.forEach((doc, from) => {
    doc.on('update', (update, origin) => {
      if (origin === 'network') return;
      queues.forEach((queue, to) => {
        if (to !== from) queue.push(update);
      });
    });
  });
  const deliver = (peer: number, at: number, copies: number) => {
    const [update] = queues[peer]?.splice(at, 1) ?? [];
    const doc = docs[peer];
    if (update === undefined || doc === undefined) return;
    for (let copy = 0; copy < copies; copy++) Y.applyUpdate(doc, update, 'network');
  };
  const deliverTo = (peer: number) => {
    while ((queues[peer]?.length ?? 0) > 0) deliver(peer, 0, 1);
  };
  return {
    docs,
    deliverOne(rng) {
      const waiting = queues.flatMap((queue, peer) => (queue.length > 0 ? [peer] : []));
      if (waiting.length === 0) return false;
      const peer = rng.pick(waiting);
      deliver(peer, rng.int(queues[peer]?.length ?? 0), 1 + rng.int(2));
      return true;
    },
    deliverTo,
    deliverAll() {
      for (let peer = 0; peer < docs.length; peer++) deliverTo(peer);
    },
  };
}
