import { expect, it } from 'vitest';
import { RigIndex } from '#engine/address/occupancy-index.ts';
import { absolute } from '#engine/model/address.ts';
import { applyEdits } from '#engine/model/apply-edits.ts';
import { fixtureId } from '#engine/model/ids.ts';
import { EMPTY_RIG } from '#engine/model/rig.ts';
import type { PersonHere } from '../live/link.ts';
import { othersCarrying } from './others-carrying.ts';

const rig = applyEdits(EMPTY_RIG, [
  { kind: 'set-mode', type: 'Bar', mode: 'A', footprints: [4, 8] },
  {
    kind: 'add-fixture',
    fixture: fixtureId('f1'),
    cells: { type: 'Bar', mode: 'A', address: 1, address2: 101, order: 1 },
  },
  { kind: 'add-fixture', fixture: fixtureId('f2'), cells: { type: 'Bar', mode: 'A', order: 2 } },
]);
const index = new RigIndex(rig);

const seen = (where: PersonHere['where']) => othersCarrying([{ id: 7, name: 'Ana', colour: 1, where }], rig, index);

it('shows which break somebody else carries, from where, and what it would meet', () => {
  const [first, ...more] = seen({ fixture: 'f1', field: 'address2', at: absolute(1, 2) });
  expect(more).toEqual([]);
  expect(first).toMatchObject({ block: 'f1 2', from: 1, landing: { at: 2, slots: 8, over: 0, meets: ['f1'] } });
});

it('shows a block that had no address yet', () => {
  expect(seen({ fixture: 'f2', field: 'address', at: absolute(3, 510) })).toMatchObject([
    { block: 'f2 1', from: undefined, landing: { over: 1 } },
  ]);
});

it('shows nothing of who only stands in a cell, and of what cannot be', () => {
  expect(seen(null)).toEqual([]);
  expect(seen({ fixture: 'f1', field: 'address' })).toEqual([]);
  expect(seen({ fixture: 'f1', field: 'unit', at: 5 })).toEqual([]);
  expect(seen({ fixture: 'gone', field: 'address', at: 5 })).toEqual([]);
  expect(seen({ fixture: 'f1', field: 'address', at: 0.5 })).toEqual([]);
  expect(seen({ fixture: 'f1', field: 'address', at: 2 ** 40 })).toEqual([]);
});
