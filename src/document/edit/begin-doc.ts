import type * as Y from 'yjs';
import { diffEdits } from '#engine/diff/diff-edits.ts';
import { diffRigs } from '#engine/diff/rig-diff.ts';
import { EMPTY_RIG, type Rig } from '#engine/model/rig.ts';
import { readingOf } from '../read/rig-reader.ts';
import { createRigDoc, mapsOf } from '../schema/rig-doc.ts';
import { writeDifference } from './write-difference.ts';

/** A new document that reads as `rig` does, whatever stands in it. Made once, where a rig begins as another. [DO62] */
export function beginDoc(rig: Rig): Y.Doc {
  const doc = createRigDoc();
  const edits = diffEdits(diffRigs(EMPTY_RIG, rig));
  const reading = readingOf(doc);
  doc.transact(() => writeDifference(doc, mapsOf(doc), reading, rig, edits));
  return doc;
}
