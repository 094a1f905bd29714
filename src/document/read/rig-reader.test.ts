import { describe, expect, it } from 'vitest';
import * as Y from 'yjs';
import { type Rng, seededRng } from '#base/rng.ts';
import { differingRows, getRow, rowsOf } from '#base/table.ts';
import type { Edit } from '#engine/model/edit.ts';
import { fixtureId } from '#engine/model/ids.ts';
import { EMPTY_RIG } from '#engine/model/rig.ts';
import { createDocPeers } from '#tests/support/doc-peers.ts';
import { listRig, randomPlan } from '#tests/support/random-plan.ts';
import { applyPlan } from '../edit/apply-plan.ts';
import { createHistory, type History } from '../history/history.ts';
import { createRigDoc } from '../schema/rig-doc.ts';
import { type RigChange, type RigReader, readRig, watchRig } from './rig-reader.ts';

const f1 = fixtureId('f1');
const f2 = fixtureId('f2');
const plan = (...edits: Edit[]) => ({ name: 'edit', edits }) as const;
const add = (fixture = f1, channel = 1): Edit => ({ kind: 'add-fixture', fixture, cells: { channel } });
const set = (channel: number): Edit => ({ kind: 'set-cell', fixture: f1, field: 'channel', value: channel });

/** A document with one row, and everything its reader told. */
function watched() {
  const doc = createRigDoc();
  applyPlan(doc, plan(add(), add(f2, 2)), 'me');
  const reader = watchRig(doc);
  const told: RigChange[] = [];
  reader.onChange((change) => told.push(change));
  return { doc, reader, told };
}

interface Person {
  readonly doc: Y.Doc;
  readonly at: number;
  readonly history: History;
}

function actByChance(rng: Rng, { doc, at, history }: Person): void {
  const act = rng.int(12);
  if (act < 2) history.undo();
  else if (act === 2) history.redo();
  else applyPlan(doc, randomPlan(rng, 6, 5), at);
}

describe('watchRig', () => {
  it('[DO10] reads like a whole reading after any transaction, and any number of peers read the same in the end', () => {
    for (let seed = 1; seed <= 30; seed++) {
      const rng = seededRng(seed);
      const net = createDocPeers([1, 2, 3, 4].map((n) => (n * 7919 + seed * 104729) % 9973));
      const peers = net.docs.map((doc, at) => ({ doc, at, reader: watchRig(doc), history: createHistory(doc, at) }));
      for (let step = 0; step < 40; step++) {
        actByChance(rng, rng.pick(peers));
        for (let n = rng.int(4); n > 0; n--) net.deliverOne(rng);
        const { doc, reader } = rng.pick(peers);
        expect(listRig(reader.rig()), `seed ${seed} step ${step}`).toEqual(listRig(readRig(doc)));
      }
      while (net.deliverOne(rng));
      const rebuilt = new Y.Doc();
      Y.applyUpdate(rebuilt, Y.encodeStateAsUpdate(rng.pick(net.docs)));
      const wanted = listRig(readRig(rebuilt));
      for (const { reader } of peers) expect(listRig(reader.rig()), `seed ${seed}`).toEqual(wanted);
    }
  });

  it('[DO11] tells once per transaction, with exactly the rows that changed', () => {
    const { doc, told } = watched();
    applyPlan(doc, plan(set(5), set(6), set(7)), 'me');
    expect(told.map(({ fixtures, origin, local }) => ({ fixtures, origin, local }))).toEqual([
      { fixtures: ['f1'], origin: 'me', local: true },
    ]);
    const peer = new Y.Doc();
    Y.applyUpdate(peer, Y.encodeStateAsUpdate(doc));
    applyPlan(peer, plan({ kind: 'remove-fixture', fixture: f2 }), 'peer');
    Y.applyUpdate(doc, Y.encodeStateAsUpdate(peer), 'network');
    expect(told.slice(1).map(({ fixtures, origin, local }) => ({ fixtures, origin, local }))).toEqual([
      { fixtures: ['f2'], origin: 'network', local: false },
    ]);
    expect(told[1]?.before).toBe(told[0]?.after);
  });

  it('[DO11] law: the fixtures told are those that differ, and every other row is the same object', () => {
    const rng = seededRng(5);
    const { doc, reader, told } = watched();
    for (let step = 0; step < 300; step++) {
      const before = reader.rig();
      applyPlan(doc, randomPlan(rng, 8, 4), 'me');
      const fixtures = told.splice(0).flatMap((change) => change.fixtures);
      const differing = differingRows(before.fixtures, reader.rig().fixtures).map(({ id }) => id);
      expect([...fixtures].sort()).toEqual(differing.sort());
    }
  });

  it('[DO11] is silent, and keeps its rig, when a transaction changes nothing that is read', () => {
    const { doc, reader, told } = watched();
    const rig = reader.rig();
    doc.getMap('cells').set('nobody/channel', 5);
    doc.getMap('cells').set('f1/unknown', 5);
    doc.getMap('cells').set('f1/channel', 1);
    doc.getMap('elsewhere').set('x', 1);
    doc.getMap('positions').set('bridge', 'junk');
    expect(told).toEqual([]);
    expect(reader.rig()).toBe(rig);
  });

  it('[DO12] keeps tables of which nothing changed', () => {
    const { doc, reader } = watched();
    const before = reader.rig();
    applyPlan(doc, plan({ kind: 'set-position', name: 'Bridge', order: 1 }), 'me');
    const after = reader.rig();
    expect(after.fixtures).toBe(before.fixtures);
    expect(after.modes).toBe(before.modes);
    expect(after.positions).not.toBe(before.positions);
  });

  it('is frozen, and stops telling after close', () => {
    const { doc, reader, told } = watched();
    expect(Object.isFrozen(reader.rig())).toBe(true);
    for (const row of rowsOf(reader.rig().fixtures)) expect(Object.isFrozen(row)).toBe(true);
    const stop = reader.onChange(() => told.pop());
    stop();
    reader.close();
    applyPlan(doc, plan(set(9)), 'me');
    expect(told).toEqual([]);
    expect(getRow(reader.rig().fixtures, f1)?.channel).toBe(9);
  });

  it('[DO13] reads what is in the document even in the midst of a transaction, and plans made there see it', () => {
    const { doc, reader } = watched();
    doc.transact(() => {
      applyPlan(doc, plan(set(5)), 'me');
      expect(getRow(reader.rig().fixtures, f1)?.channel).toBe(5);
      applyPlan(doc, plan({ kind: 'remove-fixture', fixture: f1 }, add(f1, 8)), 'me');
    });
    expect(getRow(reader.rig().fixtures, f1)?.channel).toBe(8);
    expect(reader.rig()).toEqual(readRig(doc));
  });

  it('[DO13] a reader made in the midst of a transaction, or by an observer, is up to date then and kept up afterwards', () => {
    for (const makeWithin of ['transaction', 'observer'] as const) {
      const doc = createRigDoc();
      const channel = (reader: RigReader) => getRow(reader.rig().fixtures, f1)?.channel;
      const readers: RigReader[] = [];
      const begin = () => {
        if (readers.length > 0) return;
        const reader = watchRig(doc);
        readers.push(reader);
        applyPlan(doc, plan(add(f1, 2)), 'me');
        expect(channel(reader)).toBe(2);
      };
      doc.getMap('notes').observe(begin);
      doc.transact(() => {
        doc.getMap('notes').set('n', ['text', 1]);
        if (makeWithin === 'transaction') begin();
      });
      const [reader] = readers;
      if (reader === undefined) throw new Error('no reader was made');
      expect(channel(reader)).toBe(2);
      const before = reader.rig();
      expect(reader.rig()).toBe(before);
      applyPlan(doc, plan(set(3)), 'me');
      expect(channel(reader)).toBe(3);
      expect(listRig(reader.rig())).toEqual(listRig(readRig(doc)));
    }
  });

  it('[DO13] a listener may apply a plan', () => {
    const { doc, reader } = watched();
    const stop = reader.onChange(() => {
      stop();
      applyPlan(doc, plan(add(fixtureId('f3'), 3)), 'me');
      applyPlan(doc, plan({ kind: 'set-cell', fixture: fixtureId('f3'), field: 'unit', value: '7' }), 'me');
    });
    applyPlan(doc, plan(set(5)), 'me');
    expect(getRow(reader.rig().fixtures, fixtureId('f3'))).toMatchObject({ channel: 3, unit: '7' });
    expect(reader.rig()).toEqual(readRig(doc));
  });

  it('reads an empty document as an empty rig', () => {
    expect(readRig(new Y.Doc())).toEqual(EMPTY_RIG);
  });
});
