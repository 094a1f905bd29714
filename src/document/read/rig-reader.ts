import type * as Y from 'yjs';
import type { FixtureId } from '#engine/model/ids.ts';
import type { Rig } from '#engine/model/rig.ts';
import { createRigIndex } from './rig-index.ts';
import type { RowSource } from './row-source.ts';

/** One transaction that changed what a document reads as. */
export interface RigChange {
  readonly before: Rig;
  readonly after: Rig;
  /** The fixtures that were added, removed or changed, each once. */
  readonly fixtures: readonly FixtureId[];
  readonly origin: unknown;
  /** Whether it was made here, not received. */
  readonly local: boolean;
}

export interface RigReader {
  /** The document as it reads now. The same object until a transaction changes what it reads as. */
  rig(): Rig;
  /** Calls `listen` once after each transaction that changed the reading; the answer stops it. */
  onChange(listen: (change: RigChange) => void): () => void;
  close(): void;
}

/**
 * Reads a document and keeps the reading up. Total: any content at all is read, what makes no sense is passed over. Rows that
 * did not change stay the same objects. Readers of one document share its index, which lives as long as the document.
 */
export function watchRig(doc: Y.Doc): RigReader {
  const live = liveIndexOf(doc);
  const mine = new Set<(change: RigChange) => void>();
  const tell = (change: RigChange) => {
    for (const listen of [...mine]) listen(change);
  };
  live.listeners.add(tell);
  return {
    rig: () => live.current().rig(),
    onChange(listen) {
      mine.add(listen);
      return () => mine.delete(listen);
    },
    close() {
      mine.clear();
      live.listeners.delete(tell);
    },
  };
}

/** The document as it reads now, read as a whole. */
export function readRig(doc: Y.Doc): Rig {
  return createRigIndex(doc).rig();
}

/** The reading of a document and where its rows are, for `document/edit`: kept up, or made anew in the midst of a transaction. */
export interface Reading {
  rig(): Rig;
  readonly rows: RowSource;
}

export function readingOf(doc: Y.Doc): Reading {
  return liveIndexOf(doc).current();
}

interface LiveIndex {
  readonly listeners: Set<(change: RigChange) => void>;
  current(): Reading;
}

const LIVE = new WeakMap<Y.Doc, LiveIndex>();

function liveIndexOf(doc: Y.Doc): LiveIndex {
  const known = LIVE.get(doc);
  if (known !== undefined) return known;
  const made = createLiveIndex(doc);
  LIVE.set(doc, made);
  return made;
}

function createLiveIndex(doc: Y.Doc): LiveIndex {
  const index = createRigIndex(doc);
  const listeners = new Set<(change: RigChange) => void>();
  // Transactions that have begun and are not followed yet: they are in the document already, but not in the index. An index
  // made in the midst of some cannot count them, and is behind until all are over.
  let behind = doc._transaction === null && doc._transactionCleanups.length === 0 ? 0 : Number.POSITIVE_INFINITY;
  doc.on('beforeTransaction', () => {
    behind += 1;
  });
  doc.on('afterAllTransactions', () => {
    behind = 0;
  });
  doc.on('afterTransaction', (transaction) => {
    const before = index.rig();
    const fixtures = index.follow(transaction);
    behind -= 1;
    const after = index.rig();
    if (after === before) return;
    const { origin, local } = transaction;
    const change: RigChange = Object.freeze({ before, after, fixtures, origin, local });
    for (const listen of [...listeners]) listen(change);
  });
  return { listeners, current: () => (behind === 0 ? index : createRigIndex(doc)) };
}
