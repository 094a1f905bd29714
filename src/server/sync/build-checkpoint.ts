import * as Y from 'yjs';
import { loadRig } from '../stored/load-rig.ts';
import type { LoggedUpdate, StoredRig } from '../stored/stored-rig.ts';

/**
 * The checkpoint that follows from one view of the log: the last one with the rows after it, up to the first row that is not there
 * yet. Undefined when it would hold nothing new. Never built from a document in memory, which may lack what others wrote.
 */
export function buildCheckpoint(view: StoredRig): LoggedUpdate | undefined {
  const whole = upToFirstHole(view);
  if (whole.tail.length === 0) return undefined;
  const { doc, seq } = loadRig(whole);
  const bytes = Y.encodeStateAsUpdate(doc);
  doc.destroy();
  return { seq, bytes };
}

/** A view of the log without the rows that follow one which is not there (yet). */
export function upToFirstHole({ checkpoint, tail }: StoredRig): StoredRig {
  const from = (checkpoint?.seq ?? 0) + 1;
  const hole = tail.findIndex((row, nth) => row.seq !== from + nth);
  return { checkpoint, tail: hole < 0 ? tail : tail.slice(0, hole) };
}
