import { expect, test } from 'vitest';
import { seededRng } from '#base/rng.ts';
import type { CrewSummary } from '#wire/crews.ts';
import type { RigSummary } from '#wire/rigs.ts';
import { groupRigs } from './group-rigs.ts';

/** `Act 2 show North@Quay`: the rig "Act 2", a show rig of crew North at the venue Quay; `@-` is no venue. */
function rig(text: string): RigSummary {
  const [, name, kind, crew, venue] = /^(.+) (show|house) (\w+)@([\w-]+)$/.exec(text) ?? [];
  const venueName = venue === '-' ? null : (venue ?? null);
  return {
    id: name ?? '',
    name: name ?? '',
    kind: kind === 'house' ? 'house' : 'show',
    crewId: crew ?? '',
    crewName: crew ?? '',
    venueId: venueName,
    venueName,
    role: 'editor',
    changedAt: '2026-11-25T10:00:00.000Z',
    startedFrom: null,
  };
}

const crew = (name: string): CrewSummary => ({ id: name, name, role: 'lead', members: 2, rigs: 0 });

const shape = (rigs: readonly RigSummary[], crews: readonly CrewSummary[]) =>
  groupRigs(rigs, crews).map(
    ({ name, venues }) => `${name}: ${venues.map((v) => `${v.name ?? '-'} [${v.rigs.map((r) => r.name)}]`).join(' ')}`,
  );

const RIGS = [
  'Act 10 show North@Quay',
  'Act 2 show North@Quay',
  'House show North@Attic',
  'Quay house rig house North@Quay',
  'Loose show North@-',
  'Other show South@-',
].map(rig);

test('puts house rigs first, the rest in natural order, those without a venue last', () => {
  expect(shape(RIGS, [crew('South'), crew('North')])).toEqual([
    'North: Attic [House] Quay [Quay house rig,Act 2,Act 10] - [Loose]',
    'South: - [Other]',
  ]);
});

test('shows a crew without rigs, and rigs whose crew is not known', () => {
  expect(shape(RIGS.slice(5), [crew('Empty')])).toEqual(['Empty: ', 'South: - [Other]']);
});

test('keeps every rig exactly once, whatever order they come in', () => {
  const rng = seededRng(7);
  const expected = shape(RIGS, []);
  for (let round = 0; round < 50; round++) {
    const shuffled = [...RIGS].sort(() => (rng.next() < 0.5 ? -1 : 1));
    expect(shape(shuffled, [])).toEqual(expected);
  }
});
