import * as Y from 'yjs';
import { assert } from '#base/assert.ts';
import { applyPlan } from '#document/edit/apply-plan.ts';
import { readRig } from '#document/read/rig-reader.ts';
import type { Edit } from '#engine/model/edit.ts';
import type { Rig } from '#engine/model/rig.ts';
import type { TestServer } from './test-server.ts';

/** Writes edits into a rig as somebody's page would have sent them, and waits until they are committed. */
export async function writeEdits(
  { running }: TestServer,
  rigId: string,
  author: string,
  edits: readonly Edit[],
): Promise<void> {
  const state = await running.sync.readRig(rigId, (doc) => Y.encodeStateAsUpdate(doc));
  assert(state, `there is no rig ${rigId}`);
  const doc = new Y.Doc();
  Y.applyUpdate(doc, state);
  const before = Y.encodeStateVector(doc);
  const applied = applyPlan(doc, { name: 'edit', edits }, 'test');
  assert(applied.ok, `the edits were refused: ${JSON.stringify(applied)}`);
  const written = await running.sync.applyUpdate(rigId, author, Y.encodeStateAsUpdate(doc, before));
  assert(written.ok, `the edits were not committed: ${JSON.stringify(written)}`);
  doc.destroy();
}

/** A rig as it is committed. */
export async function rigOf({ running }: TestServer, rigId: string): Promise<Rig> {
  const rig = await running.sync.readRig(rigId, readRig);
  assert(rig, `there is no rig ${rigId}`);
  return rig;
}
