import * as Y from 'yjs';
import { createRigDoc } from '#document/schema/rig-doc.ts';

/** What the log of a new rig begins with: an empty document that says which format it is of. */
export function firstUpdate(): Uint8Array<ArrayBuffer> {
  const doc = createRigDoc();
  const update = Uint8Array.from(Y.encodeStateAsUpdate(doc));
  doc.destroy();
  return update;
}
