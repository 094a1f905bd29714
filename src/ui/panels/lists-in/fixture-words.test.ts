import { expect, test } from 'vitest';
import { fixtureWords } from './fixture-words.ts';

test('says a fixture in words, universe and slot before absolute numbers', () => {
  expect(
    fixtureWords({
      channel: 101,
      position: 'Bridge',
      unit: '4A',
      type: 'Spot',
      mode: 'Wide',
      address: 613,
      address3: 5,
      purpose: 'Front',
      notes: 'iris',
    }),
  ).toEqual({
    channel: '101',
    position: 'Bridge',
    unit: '4A',
    type: 'Spot',
    mode: 'Wide',
    address: '2:101 1:5',
    rest: 'Front · iris',
  });
});

test('shows what could not be read as it stands, and nothing for what is not there', () => {
  expect(fixtureWords({ channel: 'x7', address: 'ask Jo' })).toMatchObject({
    channel: 'x7',
    address: 'ask Jo',
    unit: '',
  });
});
