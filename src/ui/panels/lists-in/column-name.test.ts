import { expect, test } from 'vitest';
import { columnName } from './column-name.ts';

test.each([
  [0, 'A'],
  [25, 'Z'],
  [26, 'AA'],
  [51, 'AZ'],
  [52, 'BA'],
  [701, 'ZZ'],
  [702, 'AAA'],
])('column %i is %s', (column, name) => {
  expect(columnName(column)).toBe(name);
});
