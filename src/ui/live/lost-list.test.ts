import { expect, it } from 'vitest';
import { fixtureId } from '#engine/model/ids.ts';
import { createLostList, type LostValue } from './lost-list.ts';

const lost = (row: string, mine: string, by?: string): LostValue => ({
  fixture: fixtureId(row),
  field: 'purpose',
  mine,
  theirs: 'theirs',
  at: 0,
  by,
});

it('keeps the latest value of each cell until it is answered', () => {
  const list = createLostList();
  let told = 0;
  list.onChange(() => {
    told += 1;
  });
  list.add([lost('a', 'first'), lost('b', 'other')]);
  list.add([lost('a', 'second')]);
  expect(list.all().map(({ mine }) => mine)).toEqual(['other', 'second']);
  const [first] = list.all();
  if (first) list.drop(first);
  expect(list.all().map(({ mine }) => mine)).toEqual(['second']);
  expect(told).toBe(3);
});

it('names who set the other value once somebody is seen in the cell, and does not rename', () => {
  const list = createLostList();
  list.add([lost('a', 'x'), lost('b', 'y', 'Imke')]);
  list.name(({ fixture }) => (fixture === 'a' ? 'Tomas' : 'Nobody'));
  expect(list.all().map(({ by }) => by)).toEqual(['Tomas', 'Imke']);
  const named = list.all();
  list.name(() => 'Somebody else');
  expect(list.all()).toBe(named);
});
