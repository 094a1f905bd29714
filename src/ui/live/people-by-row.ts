import type { FixtureId } from '#engine/model/ids.ts';
import type { PersonHere } from './link.ts';

/** The people in each row; a row whose people are as in `before` keeps its array. */
export function peopleByRow(
  people: readonly PersonHere[],
  before: ReadonlyMap<FixtureId, readonly PersonHere[]>,
): ReadonlyMap<FixtureId, readonly PersonHere[]> {
  const rows = new Map<FixtureId, PersonHere[]>();
  for (const person of people) {
    if (person.where === null) continue;
    const id = person.where.fixture as FixtureId;
    const some = rows.get(id);
    if (some) some.push(person);
    else rows.set(id, [person]);
  }
  return new Map([...rows].map(([id, some]) => [id, keptIfSame(before.get(id), some)]));
}

function keptIfSame(before: readonly PersonHere[] | undefined, now: readonly PersonHere[]): readonly PersonHere[] {
  const same = before?.length === now.length && now.every((person, n) => samePlace(person, before[n]));
  return same ? before : now;
}

function samePlace(a: PersonHere, b: PersonHere | undefined): boolean {
  return a.id === b?.id && a.name === b.name && a.colour === b.colour && a.where?.field === b.where?.field;
}
