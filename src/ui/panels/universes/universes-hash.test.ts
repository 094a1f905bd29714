import { expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import type { Universe } from '#engine/model/address.ts';
import { readPlace, spellPlace, type UniversesPlace } from './universes-hash.ts';

it('reads a place of the universes page as it was spelled', () => {
  const rng = seededRng(3);
  const places: readonly UniversesPlace[] = [
    { view: 'all', universe: undefined },
    { view: 'slots', universe: undefined },
    ...Array.from({ length: 200 }, () => ({ view: 'slots' as const, universe: (1 + rng.int(63_999)) as Universe })),
  ];
  for (const place of places) expect(readPlace(spellPlace(place))).toEqual(place);
});

it('takes anything else for no universe', () => {
  for (const hash of [
    '',
    '#',
    '#12',
    '#universe-0',
    '#universe-64000',
    '#universe-1e3',
    '#universe--1',
    '#main',
    '#universe-12/3',
  ])
    expect(readPlace(hash)).toEqual({ view: 'slots', universe: undefined });
});
