import { expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import { applyEdits } from '#engine/model/apply-edits.ts';
import type { Edit } from '#engine/model/edit.ts';
import { fixtureId } from '#engine/model/ids.ts';
import { EMPTY_RIG, type Position } from '#engine/model/rig.ts';
import { orderPositions, positionsInOrder, positionsInUse, renamePosition } from './position-order.ts';

const NAMES = ['LX 1', 'LX 2', 'LX 10', 'Boom'];
const edits: Edit[] = NAMES.map((name, order) => ({ kind: 'set-position', name, order: order * 3 }));
const hung = ['lx 1', 'LX 1', 'Pit', ''].map(
  (position, n): Edit => ({ kind: 'add-fixture', fixture: fixtureId(`f${n}`), cells: { position } }),
);
const rig = applyEdits(EMPTY_RIG, [...edits, ...hung]);
const names = (positions: readonly Position[]) => positions.map(({ name }) => name);

it('puts positions in any order that is asked for, and writes nothing when they stand so', () => {
  const rng = seededRng(2);
  let now = rig;
  for (let round = 0; round < 50; round++) {
    const wanted = [...NAMES]
      .map((name) => ({ name, at: rng.next() }))
      .sort((a, b) => a.at - b.at)
      .map(({ name }) => name);
    now = applyEdits(now, orderPositions(now, wanted).edits);
    expect(names(positionsInOrder(now))).toEqual(wanted);
    expect(orderPositions(now, wanted).edits).toEqual([]);
  }
});

it('counts units however the name is spelt, and lists what is typed in rows only', () => {
  const { units, unlisted } = positionsInUse(rig);
  expect(units.get('lx 1')).toBe(2);
  expect(unlisted).toEqual(['Pit']);
});

it('renames a position in the order and on its units', () => {
  const [first] = positionsInOrder(rig);
  if (first === undefined) throw new Error('no position');
  const after = applyEdits(rig, renamePosition(rig, first, 'Front truss').edits);
  expect(names(positionsInOrder(after))).toEqual(['Front truss', 'LX 2', 'LX 10', 'Boom']);
  expect(positionsInUse(after).units.get('front truss')).toBe(2);
  const respelt = applyEdits(rig, renamePosition(rig, first, 'lx 1').edits);
  expect(names(positionsInOrder(respelt))[0]).toBe('lx 1');
});
