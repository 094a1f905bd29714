import { describe, expect, it } from 'vitest';
import * as Y from 'yjs';
import { type Rng, seededRng } from '#base/rng.ts';
import { getRow, rowsOf } from '#base/table.ts';
import { FIELDS } from '#engine/model/field.ts';
import { fixtureId } from '#engine/model/ids.ts';
import { listRig, randomPlan } from '#tests/support/random-plan.ts';
import { applyPlan } from '../edit/apply-plan.ts';
import { createHistory } from '../history/history.ts';
import { watchLostCells } from '../history/lost-cells.ts';
import { createRigDoc, MAP_NAMES } from '../schema/rig-doc.ts';
import { readRig, watchRig } from './rig-reader.ts';

const JUNK_TEXTS = [
  '',
  '[',
  '[]',
  '[[]]',
  '[["f1"]]',
  '[["f1",1,2,3]',
  '{"id":"f1"}',
  '[["f1",{"a":1},[2],true]]',
  'null',
  '12',
];

function junkValue(rng: Rng): unknown {
  switch (rng.int(12)) {
    case 0:
      return new Uint8Array([1, 2, 3]);
    case 1:
      return new Y.Map([['f1', 1]]);
    case 2:
      return Y.Array.from([1, 2]);
    case 3:
      return new Y.Text('x');
    case 4:
      return rng.pick([Number.NaN, Number.POSITIVE_INFINITY, -0, 1e308, 2 ** 53]);
    case 5:
      return rng.pick([true, false, undefined, null, 10n]);
    case 6:
      return rng.pick([
        [],
        [[[]]],
        ['Spot', 'A', [1]],
        ['Spot', 'A', [0]],
        ['Spot', 'A', ['1']],
        ['Bridge', 'x'],
        ['a', 1, 2, 3],
      ]);
    case 7:
      return { type: 'Spot', toString: 1, ['__proto__']: 2 };
    case 8:
      return `[["f${rng.int(3)}",${rng.int(9)},"Bridge",null,"Spot","A",${rng.int(600)}]]`;
    case 9:
      return 'x'.repeat(5000);
    default:
      return rng.pick(JUNK_TEXTS);
  }
}

const junkKey = (rng: Rng): string =>
  rng.pick([
    '',
    '/',
    '__proto__',
    'constructor',
    '__proto__/channel',
    `f${rng.int(3)}`,
    `f${rng.int(3)}/${rng.pick([...FIELDS, 'nofield', 'toString', ''])}`,
    `f${rng.int(3)}/${rng.int(9)}`,
    'f1/channel/channel',
    `${'f'.repeat(65)}/channel`,
    'spot\u001fa',
    'bridge',
    String(rng.int(70000)),
    '01',
    '1e3',
    'format',
  ]);

/** Writes by a peer that keeps no rule at all. */
function vandalise(rng: Rng, doc: Y.Doc): void {
  const name = rng.pick([...MAP_NAMES, 'other']);
  if (name === 'meta') return;
  const map = doc.getMap(name);
  if (rng.int(8) === 0) map.delete(junkKey(rng));
  else map.set(junkKey(rng), junkValue(rng));
}

describe('reading a hostile document', () => {
  it('[DO14] never throws, reads the same kept up or anew, and every peer reads the same', () => {
    for (let seed = 1; seed <= 30; seed++) {
      const rng = seededRng(seed);
      const doc = createRigDoc();
      const vandal = new Y.Doc();
      Y.applyUpdate(vandal, Y.encodeStateAsUpdate(doc));
      const reader = watchRig(doc);
      const history = createHistory(doc, 'me');
      watchLostCells(doc, (client) => client === doc.clientID, { now: () => 0 });
      for (let step = 0; step < 40; step++) {
        vandal.transact(() => {
          for (let n = 1 + rng.int(6); n > 0; n--) vandalise(rng, vandal);
        });
        if (rng.int(3) === 0) applyPlan(doc, randomPlan(rng, 3, 4), 'me');
        if (rng.int(9) === 0) history.undo();
        Y.applyUpdate(doc, Y.encodeStateAsUpdate(vandal, Y.encodeStateVector(doc)), 'network');
        Y.applyUpdate(vandal, Y.encodeStateAsUpdate(doc, Y.encodeStateVector(vandal)), 'network');
        expect(listRig(reader.rig()), `seed ${seed} step ${step}`).toEqual(listRig(readRig(doc)));
      }
      expect(listRig(readRig(vandal)), `seed ${seed}`).toEqual(listRig(reader.rig()));
      for (const row of rowsOf(reader.rig().fixtures)) expect(row.id).toMatch(/^f\d$/);
    }
  });

  it('[DO14] reads a part that a peer filled as another type', () => {
    const vandal = new Y.Doc();
    vandal.getArray('cells').push(['f1/channel', 5]);
    vandal.getText('blocks').insert(0, '[["f1",1]]');
    vandal.getXmlFragment('modes').push([new Y.XmlElement('p')]);
    const doc = createRigDoc();
    const reader = watchRig(doc);
    Y.applyUpdate(doc, Y.encodeStateAsUpdate(vandal));
    expect(listRig(reader.rig())).toEqual(listRig(readRig(createRigDoc())));
    expect(
      applyPlan(
        doc,
        { name: 'insert', edits: [{ kind: 'add-fixture', fixture: fixtureId('f1'), cells: { channel: 3 } }] },
        'me',
      ).ok,
    ).toBe(true);
    expect(getRow(reader.rig().fixtures, fixtureId('f1'))?.channel).toBe(3);
  });

  it('[DO14] a value of the wrong kind over a cell is passed over: the row shows what its block says', () => {
    const doc = createRigDoc();
    const f1 = fixtureId('f1');
    applyPlan(doc, { name: 'insert', edits: [{ kind: 'add-fixture', fixture: f1, cells: { channel: 3 } }] }, 'me');
    const reader = watchRig(doc);
    for (const junk of [true, [5], { channel: 5 }, new Uint8Array([5]), Number.NaN]) {
      doc.getMap('cells').set('f1/channel', junk);
      expect(getRow(reader.rig().fixtures, f1)?.channel).toBe(3);
    }
    doc.getMap('cells').set('f1/channel', 'five');
    expect(getRow(reader.rig().fixtures, f1)).toMatchObject({
      channel: null,
      unreadable: [{ field: 'channel', value: 'five' }],
    });
  });

  it('[DO9] of one id in two blocks the block of the lower name counts, and the other when that is gone', () => {
    const doc = createRigDoc();
    const reader = watchRig(doc);
    const channel = () => getRow(reader.rig().fixtures, fixtureId('f1'))?.channel;
    doc.getMap('blocks').set('b', '[["f1",2]]');
    doc.getMap('blocks').set('a', '[["f1",1],["f1",9]]');
    expect(channel()).toBe(1);
    expect(reader.rig()).toEqual(readRig(doc));
    doc.getMap('blocks').delete('a');
    expect(channel()).toBe(2);
    doc.getMap('blocks').delete('b');
    expect(channel()).toBeUndefined();
  });
});
