import { compareNatural } from '#engine/model/natural-order.ts';
import type { CrewSummary } from '#wire/crews.ts';
import type { RigSummary } from '#wire/rigs.ts';
import type { Role } from '#wire/role.ts';

export interface CrewGroup {
  readonly id: string;
  readonly name: string;
  readonly role: Role;
  /** Undefined when only the rigs are known, not the crew itself. */
  readonly members: number | undefined;
  readonly venues: readonly VenueGroup[];
}

/** The rigs of one crew at one venue, or at none; rigs in natural order of their names, house rigs first. */
export interface VenueGroup {
  readonly id: string | null;
  readonly name: string | null;
  readonly rigs: readonly RigSummary[];
}

/** Every crew once, with its rigs by venue: crews and venues by name, rigs without a venue last. */
export function groupRigs(rigs: readonly RigSummary[], crews: readonly CrewSummary[]): readonly CrewGroup[] {
  const known = new Map(crews.map((crew) => [crew.id, { name: crew.name, role: crew.role, members: crew.members }]));
  const byCrew = groupBy(rigs, (rig) => rig.crewId);
  const ids = new Set([...known.keys(), ...byCrew.keys()]);
  return [...ids]
    .map((id): CrewGroup => {
      const own = byCrew.get(id) ?? [];
      const crew = known.get(id);
      const name = crew?.name ?? own[0]?.crewName ?? '';
      const role = crew?.role ?? own[0]?.role ?? 'reader';
      return { id, name, role, members: crew?.members, venues: byVenue(own) };
    })
    .sort((a, b) => compareNatural(a.name, b.name) || compareNatural(a.id, b.id));
}

function byVenue(rigs: readonly RigSummary[]): readonly VenueGroup[] {
  return [...groupBy(rigs, (rig) => rig.venueId)]
    .map(([id, own]) => ({ id, name: own[0]?.venueName ?? null, rigs: [...own].sort(compareRigs) }))
    .sort((a, b) => Number(a.id === null) - Number(b.id === null) || compareNatural(a.name ?? '', b.name ?? ''));
}

function compareRigs(a: RigSummary, b: RigSummary): number {
  return (
    Number(b.kind === 'house') - Number(a.kind === 'house') ||
    compareNatural(a.name, b.name) ||
    compareNatural(a.id, b.id)
  );
}

function groupBy<Row, Key>(rows: readonly Row[], keyOf: (row: Row) => Key): Map<Key, Row[]> {
  const groups = new Map<Key, Row[]>();
  for (const row of rows) {
    const group = groups.get(keyOf(row));
    if (group) group.push(row);
    else groups.set(keyOf(row), [row]);
  }
  return groups;
}
