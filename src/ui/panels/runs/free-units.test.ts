import { expect, test } from 'vitest';
import { lineRig } from '#tests/support/line-rig.ts';
import { fits, freeUnits, namesIn } from './free-units.ts';

const RIG = lineRig([
  { id: 'a', position: 'LX 2', unit: '10' },
  { id: 'b', position: 'LX 2', unit: '9', run: ' ' },
  { id: 'c', position: 'LX 10', unit: '1', type: 'Wash' },
  { id: 'd', position: 'lx  2', unit: '1', type: 'spot' },
  { id: 'e', position: 'LX 2', unit: '3', run: 'Front' },
]);

test('units on no run are offered as they hang', () => {
  expect(freeUnits(RIG).map(({ id }) => id)).toEqual(['d', 'b', 'a', 'c']);
});

test('they are found by position and type, whatever way those are written', () => {
  const free = freeUnits(RIG);
  const found = (position: string | null, type: string | null) =>
    free.filter((unit) => fits({ position, type }, unit)).map(({ id }) => id);
  expect(namesIn(free, 'position').map(([key]) => key)).toEqual(['lx 2', 'lx 10']);
  expect(namesIn(free, 'type').map(([key]) => key)).toEqual(['spot', 'wash']);
  expect(found('lx 2', 'spot')).toEqual(['d', 'b', 'a']);
  expect(found(null, 'wash')).toEqual(['c']);
  expect(found(null, null)).toEqual(['d', 'b', 'a', 'c']);
});
