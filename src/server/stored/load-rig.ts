import * as Y from 'yjs';
import { assert } from '#base/assert.ts';
import type { StoredRig } from './stored-rig.ts';

/** A document read back from the log, where the log stands, and what the next checkpoint will have to merge. */
export interface LoadedRig {
  readonly doc: Y.Doc;
  readonly seq: number;
  readonly checkpointBytes: number;
  readonly tailRows: number;
  readonly tailBytes: number;
  /** Rows that no document can take. They stay in the log; every reader of it leaves them out in the same way. */
  readonly unusable: readonly number[];
}

/** Rebuilds a document from its checkpoint and the updates after it. Total over the bytes of a row; a missing row throws. */
export function loadRig({ checkpoint, tail }: StoredRig): LoadedRig {
  const doc = new Y.Doc();
  const unusable: number[] = [];
  let seq = checkpoint?.seq ?? 0;
  if (checkpoint) Y.applyUpdate(doc, checkpoint.bytes);
  for (const row of tail) {
    assert(row.seq === seq + 1, `log row ${row.seq} follows ${seq}`);
    seq = row.seq;
    if (!tryApply(doc, row.bytes)) unusable.push(seq);
  }
  const tailBytes = tail.reduce((sum, row) => sum + row.bytes.length, 0);
  return { doc, seq, checkpointBytes: checkpoint?.bytes.length ?? 0, tailRows: tail.length, tailBytes, unusable };
}

/** Applies an update and says whether the document could take it. */
export function tryApply(doc: Y.Doc, bytes: Uint8Array): boolean {
  try {
    Y.applyUpdate(doc, bytes);
    return true;
  } catch {
    // Decoding was checked before it was logged; what is left is an update made to break the library. The caller counts it.
    return false;
  }
}
