import { expect, it } from 'vitest';
import { fixtureId } from '#engine/model/ids.ts';
import type { PersonHere } from './link.ts';
import { peopleByRow } from './people-by-row.ts';

const person = (id: number, row: string | null, field = 'purpose'): PersonHere => ({
  id,
  name: `Person ${id}`,
  colour: id,
  where: row === null ? null : { fixture: row, field },
});

it('gathers people by row, and keeps the list of a row where nobody came, moved or left', () => {
  const before = peopleByRow([person(1, 'a'), person(2, 'b'), person(3, null)], new Map());
  expect([...before.keys()]).toEqual(['a', 'b']);
  const after = peopleByRow([person(1, 'a'), person(2, 'b', 'unit'), person(3, 'c')], before);
  expect(after.get(fixtureId('a'))).toBe(before.get(fixtureId('a')));
  expect(after.get(fixtureId('b'))).not.toBe(before.get(fixtureId('b')));
  expect(after.get(fixtureId('c'))).toHaveLength(1);
});
