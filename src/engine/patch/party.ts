import type { Fixture } from '../model/fixture.ts';
import { type FixtureId, modeId } from '../model/ids.ts';
import { isLocked } from '../model/locked.ts';

/** Fixtures that act as one, or one alone: whatever moves one of them moves them all. Sorted by id, never empty. */
export interface Party {
  readonly lead: Fixture;
  readonly fixtures: readonly Fixture[];
}

/**
 * Groups fixtures into parties: one channel, one mode, the same start addresses [CH2]. Fixtures without an address act for
 * themselves. In the order in which the first of each party comes.
 */
export function partiesOf(fixtures: Iterable<Fixture>): readonly Party[] {
  const parties = new Map<string, Fixture[]>();
  for (const fixture of fixtures) {
    const key = keyOf(fixture);
    const party = parties.get(key);
    if (party === undefined) parties.set(key, [fixture]);
    else party.push(fixture);
  }
  return [...parties.values()].map((members) => {
    const sorted = members.length === 1 ? members : [...members].sort((a, b) => (a.id < b.id ? -1 : 1));
    return { lead: sorted[0] as Fixture, fixtures: sorted };
  });
}

function keyOf(fixture: Fixture): string {
  const { id, channel, addresses } = fixture;
  if (channel === null || addresses.length === 0) return `alone ${id}`;
  return `${channel} ${addresses.join(' ')} ${modeId(fixture.type, fixture.mode)}`;
}

/** Whether any of it is locked: those that act as one stand as one. [LK1] */
export const isHeld = ({ fixtures }: Party) => fixtures.some(isLocked);

export const hasAny = ({ fixtures }: Party, ids: ReadonlySet<FixtureId>) => fixtures.some(({ id }) => ids.has(id));
