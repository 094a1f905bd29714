import { expect, test } from 'vitest';
import { lineOfKey } from './line-of-key.ts';

test.each([
  ['ArrowDown', 3, 4],
  ['ArrowUp', 3, 2],
  ['ArrowUp', 0, 0],
  ['ArrowDown', 99, 99],
  ['PageDown', 3, 12],
  ['PageDown', 95, 99],
  ['PageUp', 3, 0],
  ['Home', 50, 0],
  ['End', 50, 99],
  ['a', 50, undefined],
])('%s at line %i of 100 goes to %s', (key, at, to) => {
  expect(lineOfKey(key, { at, count: 100, page: 10 })).toBe(to);
});

test('goes nowhere in an empty list', () => {
  expect(lineOfKey('ArrowDown', { at: 0, count: 0, page: 10 })).toBeUndefined();
});
