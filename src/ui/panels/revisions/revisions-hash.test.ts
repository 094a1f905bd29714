import { expect, test } from 'vitest';
import { type RevisionsPlace, readPlace, spellPlace } from './revisions-hash.ts';

const PLACES: readonly RevisionsPlace[] = [
  { kind: 'list' },
  { kind: 'one', number: 3 },
  { kind: 'pair', before: 3, after: 'now' },
  { kind: 'pair', before: 12, after: 4 },
];

test.each(PLACES)('reads back the place $kind', (place) => {
  expect(readPlace(spellPlace(place))).toEqual(place);
});

test.each(['', '#', '#now', '#0', '#3..', '#..now', '#3..4..5', '#3..x', '#list'])('of %s makes the list', (hash) => {
  expect(readPlace(hash)).toEqual({ kind: 'list' });
});
