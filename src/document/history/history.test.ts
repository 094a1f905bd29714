import { describe, expect, it } from 'vitest';
import type * as Y from 'yjs';
import { seededRng } from '#base/rng.ts';
import { getRow } from '#base/table.ts';
import type { Edit, PlanName } from '#engine/model/edit.ts';
import type { Field } from '#engine/model/field.ts';
import { fixtureId } from '#engine/model/ids.ts';
import { cellOf } from '#engine/model/read-fixture.ts';
import { createDocPeers } from '#tests/support/doc-peers.ts';
import { listRig, randomPlan } from '#tests/support/random-plan.ts';
import { applyPlan } from '../edit/apply-plan.ts';
import { readRig, watchRig } from '../read/rig-reader.ts';
import { createRigDoc } from '../schema/rig-doc.ts';
import { createHistory } from './history.ts';

const f1 = fixtureId('f1');
const f2 = fixtureId('f2');

/** Two people on one rig, A with the lower client id (whose writes lose) unless told otherwise. */
function pair(clients: readonly [number, number] = [1, 2]) {
  const net = createDocPeers(clients);
  const [a, b] = net.docs;
  if (a === undefined || b === undefined) throw new Error('two documents');
  const person = (doc: typeof a, origin: string) => ({
    doc,
    history: createHistory(doc, origin),
    plan: (name: PlanName, ...edits: Edit[]) => applyPlan(doc, { name, edits }, origin),
    cell: (id = f1, field: Field = 'channel') => {
      const row = getRow(watchRig(doc).rig().fixtures, id);
      return row === undefined ? 'no row' : cellOf(row, field);
    },
  });
  return { net, a: person(a, 'A'), b: person(b, 'B') };
}

/** Keeps who wrote each cell last and who touched each row last, and what an undo of mine took from somebody else. */
function watchWriters(doc: Y.Doc, me: string) {
  const latest = new Map<string, string>();
  const takenFromOthers: string[] = [];
  let undoing = false;
  const note = (place: string, origin: unknown, isTaken: boolean) => {
    const who = origin === me ? me : 'another';
    if (undoing && isTaken && latest.get(place) !== me) takenFromOthers.push(place);
    latest.set(place, who);
  };
  doc.getMap('cells').observe((event, { origin }) => {
    for (const key of event.changes.keys.keys()) note(key, origin, true);
  });
  watchRig(doc).onChange(({ after, fixtures, origin }) => {
    for (const id of fixtures) note(id, origin, getRow(after.fixtures, id) === undefined);
  });
  const during = <T>(run: () => T): T => {
    undoing = true;
    const value = run();
    undoing = false;
    return value;
  };
  return { takenFromOthers, during };
}

const add = (fixture = f1, channel = 1): Edit => ({ kind: 'add-fixture', fixture, cells: { channel, unit: '4' } });
const set = (value: number | null, fixture = f1): Edit => ({ kind: 'set-cell', fixture, field: 'channel', value });

describe('history', () => {
  it('[DO30] undo restores the rig exactly, plan by plan, and redo brings it back', () => {
    for (let seed = 1; seed <= 20; seed++) {
      const rng = seededRng(seed);
      const doc = createRigDoc();
      const history = createHistory(doc, 'me');
      const readings = [listRig(readRig(doc))];
      for (let step = 0; step < 15; step++) {
        const plan = randomPlan(rng, 6, 8);
        applyPlan(doc, plan, 'me');
        const reading = listRig(readRig(doc));
        if (JSON.stringify(reading) !== JSON.stringify(readings.at(-1))) readings.push(reading);
      }
      for (let round = 0; round < 2; round++) {
        for (const reading of readings.slice(0, -1).reverse()) {
          expect(history.undo()).toBeDefined();
          expect(listRig(readRig(doc)), `seed ${seed} undo`).toEqual(reading);
        }
        expect(history.undo()).toBeUndefined();
        for (const reading of readings.slice(1)) {
          expect(history.redo()).toBeDefined();
          expect(listRig(readRig(doc)), `seed ${seed} redo`).toEqual(reading);
        }
        expect(history.redo()).toBeUndefined();
      }
    }
  });

  it('[DO31] undo changes no cell that another wrote last, and removes no row that another touched last', () => {
    for (let seed = 1; seed <= 100; seed++) {
      const rng = seededRng(seed);
      const { net, a, b } = pair([1 + rng.int(2) * 2, 2]);
      const rows = Array.from({ length: 4 }, (_, n) => add(fixtureId(`f${n}`)));
      applyPlan(a.doc, { name: 'import', edits: rows }, 'somebody');
      net.deliverAll();
      const ledger = watchWriters(a.doc, 'A');
      const undoA = () => ledger.during(a.history.undo);
      for (let step = 0; step < 30; step++) {
        const who = rng.pick([a, b]);
        const plan = randomPlan(rng, 4, 4);
        who.plan(plan.name, ...plan.edits);
        if (rng.int(3) > 0) net.deliverOne(rng);
        if (rng.int(8) === 0) b.history.undo();
        if (rng.int(8) === 0) undoA();
      }
      while (undoA() !== undefined);
      expect(ledger.takenFromOthers, `seed ${seed}`).toEqual([]);
      net.deliverAll();
      expect(listRig(readRig(a.doc))).toEqual(listRig(readRig(b.doc)));
    }
  });

  it('[DO31] leaves what another wrote over my cell', () => {
    const { net, a, b } = pair();
    a.plan('edit', add());
    a.plan('edit', set(5));
    net.deliverAll();
    b.plan('edit', set(9));
    net.deliverAll();
    expect(a.history.undo()).toBeUndefined();
    expect(a.cell()).toBe(9);
  });

  it('[DO31] of one plan, takes back the cells that are still mine', () => {
    const { net, a, b } = pair();
    a.plan('import', add(f1, 1), add(f2, 2));
    a.plan('renumber-channels', set(11, f1), set(12, f2));
    net.deliverAll();
    b.plan('edit', set(99, f2));
    net.deliverAll();
    expect(a.history.undo()).toBe('renumber-channels');
    expect([a.cell(f1), a.cell(f2)]).toEqual([1, 99]);
    expect(a.history.redo()).toBe('renumber-channels');
    expect([a.cell(f1), a.cell(f2)]).toEqual([11, 99]);
  });

  it('[DO32] after two wrote one cell at once and mine stayed, undo brings back what I had seen there', () => {
    const { net, a, b } = pair([2, 1]);
    a.plan('edit', add());
    a.plan('edit', set(5));
    net.deliverAll();
    a.plan('edit', set(7));
    b.plan('edit', set(9));
    net.deliverAll();
    expect([a.cell(), b.cell()]).toEqual([7, 7]);
    a.history.undo();
    net.deliverAll();
    expect([a.cell(), b.cell()]).toEqual([5, 5]);
  });

  it('[DO33] undo of an import keeps the rows that another has worked on since, and redo brings back the others', () => {
    const { net, a, b } = pair();
    a.plan('import', add(f1, 1), add(f2, 2));
    net.deliverAll();
    b.plan('edit', set(99, f2));
    net.deliverAll();
    a.history.undo();
    net.deliverAll();
    expect([a.cell(f1), a.cell(f2), b.cell(f1), b.cell(f2)]).toEqual(['no row', 99, 'no row', 99]);
    a.history.redo();
    net.deliverAll();
    expect([b.cell(f1), b.cell(f2)]).toEqual([1, 99]);
  });

  it('[DO33] redo of a removal leaves a row that another has worked on since the undo', () => {
    const { net, a, b } = pair();
    a.plan('edit', add());
    a.plan('remove', { kind: 'remove-fixture', fixture: f1 });
    a.history.undo();
    net.deliverAll();
    b.plan('edit', set(8));
    net.deliverAll();
    a.history.redo();
    net.deliverAll();
    expect([a.cell(), b.cell()]).toEqual([8, 8]);
  });

  it('[DO15] undo of a removal brings the row back with what others wrote into it meanwhile', () => {
    const { net, a, b } = pair();
    a.plan('edit', add());
    net.deliverAll();
    a.plan('remove', { kind: 'remove-fixture', fixture: f1 });
    b.plan('edit', set(8));
    net.deliverAll();
    expect([a.cell(), b.cell()]).toEqual(['no row', 'no row']);
    a.history.undo();
    net.deliverAll();
    expect([a.cell(), b.cell()]).toEqual([8, 8]);
  });

  it('[DO16] of two who removed one row at once, the undo of one leaves the removal of the other', () => {
    for (const clients of [
      [1, 2],
      [2, 1],
    ] as const) {
      const { net, a, b } = pair(clients);
      a.plan('edit', add());
      net.deliverAll();
      a.plan('remove', { kind: 'remove-fixture', fixture: f1 });
      b.plan('remove', { kind: 'remove-fixture', fixture: f1 });
      net.deliverAll();
      a.history.undo();
      net.deliverAll();
      expect([a.cell(), b.cell()]).toEqual(['no row', 'no row']);
      b.history.undo();
      net.deliverAll();
      expect([a.cell(), b.cell()]).toEqual([1, 1]);
    }
  });

  it('[DO34] names the plan that comes next, skips plans of which nothing is left, and forgets redo after a new plan', () => {
    const { net, a, b } = pair();
    const told: (PlanName | undefined)[] = [];
    a.history.onChange(() => told.push(a.history.nextUndo()));
    a.plan('import', add());
    a.plan('edit', set(5));
    expect(a.plan('edit', set(5)).ok).toBe(true);
    expect(told).toEqual(['import', 'edit']);
    net.deliverAll();
    b.plan('edit', set(6));
    net.deliverAll();
    expect(a.history.canRedo()).toBe(false);
    a.plan('fill', { kind: 'set-cell', fixture: f1, field: 'unit', value: '5' });
    expect(a.history.undo()).toBe('fill');
    expect(a.history.nextRedo()).toBe('fill');
    a.plan('move', { kind: 'set-cell', fixture: f1, field: 'unit', value: '6' });
    expect(a.history.canRedo()).toBe(false);
    expect(a.history.undo()).toBe('move');
    expect(a.history.undo()).toBeUndefined();
    expect(a.cell()).toBe(6);
    expect(a.history.canUndo()).toBe(false);
  });
});
