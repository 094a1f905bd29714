import { expect, it } from 'vitest';
import { rigOf } from '#tests/support/rig-shorthand.ts';
import { findUnit } from './find-unit.ts';

const RIG = rigOf(
  '1:1 Spot/16 #105 @Bar.5\n1:21 Spot/16 #7 @Bar.6\n1:41 Spot/16 #7 @Floor.105\n1:61 Spot/16 #8 @Bar.6',
);

it.each([
  ['Bar · 5', 'one f1'],
  ['  bar   5 ', 'one f1'],
  ['floor·105', 'one f3'],
  ['105', 'one f1'],
  ['7', 'many f2 f3'],
  ['Bar 6', 'many f2 f4'],
  ['Bar 7', 'none'],
  ['', 'none'],
])('%s finds %s', (text, said) => {
  const found = findUnit(RIG, text);
  const ids = found.is === 'one' ? [found.fixture.id] : found.is === 'many' ? found.fixtures.map(({ id }) => id) : [];
  expect([found.is, ...ids].join(' ')).toBe(said);
});
