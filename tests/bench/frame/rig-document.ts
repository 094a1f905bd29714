import type * as Y from 'yjs';
import { rowsOf } from '#base/table.ts';
import { applyPlan } from '#document/edit/apply-plan.ts';
import { EDIT_LIMIT } from '#document/edit/edit-schema.ts';
import { createRigDoc } from '#document/schema/rig-doc.ts';
import type { Edit, Plan } from '#engine/model/edit.ts';
import { cellsOf } from '#engine/model/read-fixture.ts';
import type { Rig } from '#engine/model/rig.ts';

/** A document that holds a rig's fixtures and modes, as one import would have written them. */
export function documentOf(rig: Rig): Y.Doc {
  const doc = createRigDoc();
  const modes = [...rowsOf(rig.modes)].map(
    ({ type, mode, footprints }): Edit => ({ kind: 'set-mode', type, mode, footprints }),
  );
  const fixtures = [...rowsOf(rig.fixtures)].map(
    (row): Edit => ({ kind: 'add-fixture', fixture: row.id, cells: cellsOf(row) }),
  );
  const edits = [...modes, ...fixtures];
  for (let from = 0; from < edits.length; from += EDIT_LIMIT) {
    mustApply(doc, { name: 'import', edits: edits.slice(from, from + EDIT_LIMIT) });
  }
  return doc;
}

/** Applies a plan, and throws when it is refused. */
export function mustApply(doc: Y.Doc, plan: Plan): void {
  const result = applyPlan(doc, plan, 'bench');
  if (!result.ok) throw new Error(`plan refused: ${JSON.stringify(result.error)}`);
}

/** The bytes of heap that stay in use after a collection; benches run with the collector at hand. */
export function heapInUse(): number {
  if (globalThis.gc === undefined) throw new Error('run with --expose-gc');
  globalThis.gc();
  return process.memoryUsage().heapUsed;
}
