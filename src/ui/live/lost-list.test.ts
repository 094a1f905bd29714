import { expect, it } from 'vitest';
import { fixtureId } from '#engine/model/ids.ts';
import { readFixture } from '#engine/model/read-fixture.ts';
import { createLostList, type Lost, type LostUnit, type LostValue } from './lost-list.ts';

const lost = (row: string, mine: string, by?: string): LostValue => ({
  kind: 'value',
  fixture: fixtureId(row),
  field: 'purpose',
  mine,
  theirs: 'theirs',
  at: 0,
  by,
});

const lostUnit = (row: string): LostUnit => {
  const fixture = fixtureId(row);
  return { kind: 'unit', fixture, row: readFixture(fixture, {}), fields: ['purpose'], at: 0 };
};
const mineOf = (lost: Lost) => (lost.kind === 'value' ? lost.mine : undefined);
const byOf = (lost: Lost) => (lost.kind === 'value' ? lost.by : undefined);

it('lets a removed unit speak for the cells of its row', () => {
  const list = createLostList();
  list.add([lost('a', 'first'), lost('b', 'other')]);
  list.add([lostUnit('a')]);
  expect(list.all().map(({ kind, fixture }) => `${kind} ${fixture}`)).toEqual(['value b', 'unit a']);
});

it('keeps the latest value of each cell until it is answered', () => {
  const list = createLostList();
  let told = 0;
  list.onChange(() => {
    told += 1;
  });
  list.add([lost('a', 'first'), lost('b', 'other')]);
  list.add([lost('a', 'second')]);
  expect(list.all().map(mineOf)).toEqual(['other', 'second']);
  const [first] = list.all();
  if (first) list.drop(first);
  expect(list.all().map(mineOf)).toEqual(['second']);
  expect(told).toBe(3);
});

it('names who set the other value once somebody is seen in the cell, and does not rename', () => {
  const list = createLostList();
  list.add([lost('a', 'x'), lost('b', 'y', 'Imke')]);
  list.name(({ fixture }) => (fixture === 'a' ? 'Tomas' : 'Nobody'));
  expect(list.all().map(byOf)).toEqual(['Tomas', 'Imke']);
  const named = list.all();
  list.name(() => 'Somebody else');
  expect(list.all()).toBe(named);
});
