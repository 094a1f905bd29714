import { describe, expect, it } from 'vitest';
import * as Y from 'yjs';
import type { Edit, Plan } from '#engine/model/edit.ts';
import { CELL_LIMIT } from '#engine/model/field.ts';
import { fixtureId } from '#engine/model/ids.ts';
import { readRig } from '../read/rig-reader.ts';
import { createRigDoc, FORMAT } from '../schema/rig-doc.ts';
import { applyPlan } from './apply-plan.ts';
import { EDIT_LIMIT } from './edit-schema.ts';

const f1 = fixtureId('f1');

/** What applying one edit is refused with; edits here come from outside, so they may be anything. */
function refusal(edit: unknown) {
  const doc = createRigDoc();
  const before = Y.encodeStateAsUpdate(doc);
  const result = applyPlan(doc, { name: 'edit', edits: [edit as Edit] }, 'me');
  if (result.ok) return 'ok';
  expect(Y.encodeStateAsUpdate(doc)).toEqual(before);
  return result.error.code === 'malformed' ? `${result.error.edit} ${result.error.path}` : result.error.code;
}

describe('a plan is refused whole', () => {
  it.each<[string, unknown]>([
    ['ok', { kind: 'add-fixture', fixture: 'f1', cells: {} }],
    ['ok', { kind: 'add-fixture', fixture: 'f'.repeat(64), cells: { notes: 'x'.repeat(CELL_LIMIT), channel: 1 } }],
    ['0 fixture', { kind: 'add-fixture', fixture: 'f'.repeat(65), cells: {} }],
    ['0 fixture', { kind: 'add-fixture', fixture: '', cells: {} }],
    ['0 fixture', { kind: 'add-fixture', fixture: 'a/b', cells: {} }],
    ['0 fixture', { kind: 'remove-fixture', fixture: 'a\u0000' }],
    ['0 cells.notes', { kind: 'add-fixture', fixture: 'f1', cells: { notes: 'x'.repeat(CELL_LIMIT + 1) } }],
    ['0 cells', { kind: 'add-fixture', fixture: 'f1', cells: { colours: 'red' } }],
    ['0 value', { kind: 'set-cell', fixture: 'f1', field: 'notes', value: true }],
    ['0 value', { kind: 'set-cell', fixture: 'f1', field: 'notes', value: Number.NaN }],
    ['0 value', { kind: 'set-cell', fixture: 'f1', field: 'notes', value: 'half \ud83d' }],
    ['ok', { kind: 'set-cell', fixture: 'f1', field: 'notes', value: 'whole \ud83d\ude00' }],
    ['0 field', { kind: 'set-cell', fixture: 'f1', field: 'toString', value: 1 }],
    ['ok', { kind: 'set-mode', type: 'Spot', mode: '', footprints: [0, 512] }],
    ['0 footprints', { kind: 'set-mode', type: 'Spot', mode: 'A', footprints: [] }],
    ['0 footprints', { kind: 'set-mode', type: 'Spot', mode: 'A', footprints: [0, 0] }],
    ['0 footprints', { kind: 'set-mode', type: 'Spot', mode: 'A', footprints: [1, 1, 1, 1, 1] }],
    ['0 footprints.0', { kind: 'set-mode', type: 'Spot', mode: 'A', footprints: [513] }],
    ['0 footprints.0', { kind: 'set-mode', type: 'Spot', mode: 'A', footprints: [1.5] }],
    ['0 type', { kind: 'set-mode', type: ' ', mode: 'A', footprints: [1] }],
    ['0 name', { kind: 'set-position', name: ' ', order: 1 }],
    ['0 universe', { kind: 'set-universe', universe: 64000, label: 'x' }],
    ['0 universe', { kind: 'set-universe', universe: 0, label: 'x' }],
    ['0 kind', { kind: 'drop-table' }],
    ['0 ', { kind: 'remove-fixture', fixture: 'f1', extra: 1 }],
  ])('[DO21] %s', (wanted, edit) => {
    expect(refusal(edit)).toBe(wanted);
  });

  it('[DO21] writes nothing of a plan of which one edit is wrong', () => {
    const doc = createRigDoc();
    const add: Edit = { kind: 'add-fixture', fixture: f1, cells: { channel: 1 } };
    const wrong: unknown = { kind: 'set-cell', fixture: 'f1', field: 'notes', value: [] };
    expect(applyPlan(doc, { name: 'edit', edits: [add, wrong as Edit] }, 'me')).toMatchObject({
      ok: false,
      error: { code: 'malformed', edit: 1, path: 'value' },
    });
    expect(readRig(doc).fixtures.size).toBe(0);
  });

  it('[DO21] of too many edits, or a name that is none', () => {
    const edits = Array.from({ length: EDIT_LIMIT + 1 }, (): Edit => ({ kind: 'remove-mode', type: 'a', mode: 'b' }));
    expect(applyPlan(createRigDoc(), { name: 'edit', edits }, 'me')).toEqual({
      ok: false,
      error: { code: 'too-many-edits', count: EDIT_LIMIT + 1, limit: EDIT_LIMIT },
    });
    const nameless: unknown = { name: 'conquer', edits: [] };
    expect(applyPlan(createRigDoc(), nameless as Plan, 'me')).toMatchObject({
      error: { code: 'malformed', edit: null, path: 'name' },
    });
  });

  it('[DO22] on a document that is no rig, has not arrived yet, or is of a newer format', () => {
    const plan: Plan = { name: 'edit', edits: [] };
    expect(applyPlan(new Y.Doc(), plan, 'me')).toEqual({ ok: false, error: { code: 'not-a-rig' } });
    const newer = createRigDoc();
    newer.getMap('meta').set('format', FORMAT + 1);
    expect(applyPlan(newer, plan, 'me')).toEqual({ ok: false, error: { code: 'newer-format' } });
  });

  it('[DO23] a plan that changes nothing writes nothing', () => {
    const doc = createRigDoc();
    const set = (value: string | null): Edit => ({ kind: 'set-cell', fixture: f1, field: 'notes', value });
    applyPlan(doc, { name: 'edit', edits: [{ kind: 'add-fixture', fixture: f1, cells: {} }] }, 'me');
    let updates = 0;
    doc.on('update', () => {
      updates += 1;
    });
    applyPlan(doc, { name: 'edit', edits: [set('a'), set(''), { kind: 'remove-mode', type: 'a', mode: 'b' }] }, 'me');
    expect(updates).toBe(0);
    applyPlan(doc, { name: 'edit', edits: [set('a')] }, 'me');
    expect(updates).toBe(1);
  });
});
