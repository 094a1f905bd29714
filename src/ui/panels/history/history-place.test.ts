import { expect, test } from 'vitest';
import { fixtureId } from '#engine/model/ids.ts';
import { readPlace, spellPlace } from './history-place.ts';

test.each([
  { unit: null, field: null, moment: null },
  { unit: fixtureId('a b&c=d'), field: 'address', moment: null },
  { unit: null, field: null, moment: 12 },
] as const)('reads back the place %o', (place) => {
  expect(readPlace(spellPlace(place))).toEqual(place);
});

test.each(['#moment=0', '#moment=x', '#field=none', '#unit=', '#elsewhere'])('of %s makes the timeline', (hash) => {
  expect(readPlace(hash)).toEqual({ unit: null, field: null, moment: null });
});
