import { expect, it } from 'vitest';
import { applyEdits } from '#engine/model/apply-edits.ts';
import { fixtureId } from '#engine/model/ids.ts';
import { readFixture } from '#engine/model/read-fixture.ts';
import { EMPTY_RIG } from '#engine/model/rig.ts';
import { knownValues, suggest } from './suggestions.ts';

const rig = applyEdits(EMPTY_RIG, [
  { kind: 'set-mode', type: 'Corvid spot', mode: 'Extended', footprints: [27] },
  { kind: 'set-mode', type: 'Corvid spot', mode: 'Basic', footprints: [14] },
  { kind: 'set-mode', type: 'Wash', mode: 'Plain', footprints: [4] },
  { kind: 'set-position', name: 'LX 10', order: 1 },
  { kind: 'add-fixture', fixture: fixtureId('a'), cells: { position: 'lx 10', purpose: 'Top' } },
  { kind: 'add-fixture', fixture: fixtureId('b'), cells: { position: 'LX 2' } },
]);
const row = readFixture(fixtureId('a'), { type: 'corvid  SPOT' });

it('knows the modes of the row’s own type, and every name once in natural order', () => {
  expect(knownValues(rig, row, 'mode')).toEqual(['Basic', 'Extended']);
  expect(knownValues(rig, row, 'type')).toEqual(['Corvid spot', 'Wash']);
  expect(knownValues(rig, row, 'position')).toEqual(['LX 2', 'LX 10']);
  expect(knownValues(rig, row, 'purpose')).toEqual(['Top']);
  expect(knownValues(rig, row, 'unit')).toEqual([]);
});

it('suggests what starts with the text before what holds it, and nothing where the text says it all', () => {
  expect(suggest(['Back wash', 'Wash'], 'wa')).toEqual(['Wash', 'Back wash']);
  expect(suggest(['Wash', 'Spot'], 'wash')).toEqual([]);
  expect(suggest(['Wash', 'Washer'], 'wash')).toEqual(['Wash', 'Washer']);
  expect(suggest(['A', 'B'], '')).toEqual(['A', 'B']);
});
