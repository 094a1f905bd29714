import { describe, expect, it } from 'vitest';
import type * as Y from 'yjs';
import { seededRng } from '#base/rng.ts';
import type { DraftEdit } from '#engine/draft/draft.ts';
import { createDocPeers } from '#tests/support/doc-peers.ts';
import { randomDraftEdits } from '#tests/support/random-draft.ts';
import { applyDraftEdits } from './apply-draft-edits.ts';
import { createDraftDoc } from './draft-doc.ts';
import { createDraftHistory, type DraftHistory } from './draft-history.ts';
import { readDraft } from './draft-reader.ts';

const mode = (id: string, order = 1): DraftEdit => ({ of: 'mode', mode: id, field: 'order', value: order });
const row = (id: string, order: number): DraftEdit => ({ of: 'row', mode: 'm', row: id, field: 'order', value: order });
const slots = (id: string, value: string): DraftEdit => ({ of: 'row', mode: 'm', row: id, field: 'slots', value });

const undoAll = (history: DraftHistory) => {
  while (history.undo());
};

/** Keeps who wrote each cell last, and says which cells of others something changes. */
function watchWriters(doc: Y.Doc) {
  const others = new Set<string>();
  let seen: string[] = [];
  doc.getMap('cells').observe(({ keysChanged }, { origin }) => {
    const keys = [...keysChanged].map(String);
    seen.push(...keys.filter((key) => others.has(key)));
    for (const key of keys) {
      if (origin === 'a') others.delete(key);
      else others.add(key);
    }
  });
  return {
    takenBy(run: () => void): readonly string[] {
      seen = [];
      run();
      return seen;
    },
  };
}

describe('createDraftHistory', () => {
  it('[DD30] alone, undo restores the reading exactly, step by step, and redo brings it back', () => {
    for (let seed = 1; seed <= 40; seed++) {
      const rng = seededRng(seed);
      const doc = createDraftDoc([mode('m1'), mode('m2', 2)]);
      const history = createDraftHistory(doc, 'me');
      const readings = [doc.getMap('cells').toJSON()];
      for (let step = 0; step < 15; step++) {
        applyDraftEdits(doc, randomDraftEdits(rng, 6), 'me');
        const now = doc.getMap('cells').toJSON();
        if (JSON.stringify(now) !== JSON.stringify(readings.at(-1))) readings.push(now);
      }
      const last = readDraft(doc);
      for (const reading of readings.slice(0, -1).reverse()) {
        expect(history.undo()).toBe(true);
        expect(doc.getMap('cells').toJSON(), `seed ${seed}`).toEqual(reading);
      }
      expect([history.canUndo(), history.undo()]).toEqual([false, false]);
      for (const reading of readings.slice(1)) {
        expect(history.redo()).toBe(true);
        expect(doc.getMap('cells').toJSON(), `seed ${seed}`).toEqual(reading);
      }
      expect([history.canRedo(), history.redo()]).toEqual([false, false]);
      expect(readDraft(doc)).toEqual(last);
    }
  });

  it('[DD31] undo does not take back what another wrote, and edits of nothing are no step', () => {
    const doc = createDraftDoc([mode('m'), row('r', 1)]);
    const history = createDraftHistory(doc, 'me');
    let told = 0;
    history.onChange(() => {
      told += 1;
    });
    applyDraftEdits(doc, [slots('r', '1')], 'me');
    applyDraftEdits(doc, [slots('r', '1')], 'me');
    applyDraftEdits(doc, [{ of: 'facts', field: 'maker', value: 'Amberline' }], 'other');
    expect([told, history.canUndo()]).toEqual([1, true]);
    expect(history.undo()).toBe(true);
    expect(history.canUndo()).toBe(false);
    expect(readDraft(doc).facts.maker).toBe('Amberline');
    expect(readDraft(doc).modes[0]?.rows[0]?.slots).toBe('');
    applyDraftEdits(doc, [slots('r', '7')], 'me');
    expect(history.canRedo()).toBe(false);
    history.close();
  });

  it('[DD32] after two wrote one cell at once and mine stayed, undo brings back what I had seen there', () => {
    const net = createDocPeers([2, 1], createDraftDoc([mode('m'), row('r', 5)]));
    const orders = () => net.docs.map((doc) => readDraft(doc).modes[0]?.rows.map((each) => each.order));
    const histories = net.docs.map((doc) => createDraftHistory(doc, doc.clientID));
    for (const [at, doc] of net.docs.entries()) applyDraftEdits(doc, [row('r', 7 + at)], doc.clientID);
    net.deliverAll();
    expect(orders()).toEqual([[7], [7]]);
    expect([histories[1]?.undo(), histories[0]?.undo()]).toEqual([false, true]);
    net.deliverAll();
    expect(orders()).toEqual([[5], [5]]);
  });

  it('[DD33] undo does not take away a row or mode that another has worked on since it was added', () => {
    const doc = createDraftDoc();
    const history = createDraftHistory(doc, 'me');
    applyDraftEdits(doc, [mode('m'), row('r', 1), slots('r', '1'), row('s', 2), slots('s', '2')], 'me');
    applyDraftEdits(doc, [slots('s', '9')], 'other');
    expect(history.undo()).toBe(true);
    expect(readDraft(doc).modes.map((each) => each.rows.map((one) => [one.id, one.slots]))).toEqual([[['s', '9']]]);
    expect(history.redo()).toBe(true);
    expect(readDraft(doc).modes[0]?.rows.map((one) => [one.id, one.slots])).toEqual([
      ['r', '1'],
      ['s', '9'],
    ]);
  });

  it('[DD31] undo changes no cell that another wrote last', () => {
    for (let seed = 1; seed <= 60; seed++) {
      const rng = seededRng(seed);
      const net = createDocPeers([1 + rng.int(2) * 2, 2], createDraftDoc([mode('m1'), mode('m2', 2)]));
      const [a, b] = net.docs;
      if (a === undefined || b === undefined) throw new Error('two documents');
      const history = createDraftHistory(a, 'a');
      const watched = watchWriters(a);
      for (let step = 0; step < 30; step++) {
        const [doc, origin] = rng.pick([[a, 'a'] as const, [b, 'b'] as const]);
        applyDraftEdits(doc, randomDraftEdits(rng, 5), origin);
        net.deliverOne(rng);
      }
      net.deliverAll();
      expect(
        watched.takenBy(() => undoAll(history)),
        `seed ${seed}`,
      ).toEqual([]);
      net.deliverAll();
      expect(readDraft(a)).toEqual(readDraft(b));
    }
  });
});
