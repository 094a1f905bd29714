import { expect, it } from 'vitest';
import { listed, stretchesOf } from './listed.ts';

it('lists names as one says them', () => {
  expect([[], ['Beam'], ['Beam', 'Deck'], ['Beam', 'Truss', 3]].map(listed)).toEqual([
    '',
    'Beam',
    'Beam and Deck',
    'Beam, Truss and 3',
  ]);
});

it('gathers numbers that follow each other', () => {
  expect(stretchesOf([1, 2, 3, 7, 9, 10])).toEqual([
    [1, 3],
    [7, 7],
    [9, 10],
  ]);
  expect(stretchesOf([])).toEqual([]);
});
