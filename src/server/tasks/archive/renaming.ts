import type { MakeId } from '#base/random-id.ts';
import type { Store } from '../../db/store.ts';
import { isBuiltIn } from '../library/built-in-types.ts';
import { namesOf } from '../names-of.ts';
import type { OpenedArchive } from './open-archive.ts';

const TABLES = {
  crew: 'crew',
  venue: 'venue',
  rig: 'rig',
  type: 'fixture_type',
  draft: 'type_draft',
  handover: 'handover',
  proposal: 'proposal',
} as const;
type Thing = keyof typeof TABLES;

/** What each id of an archive is here. */
export interface Renaming {
  of(thing: Thing, id: string): string;
  person(id: string): string;
}

/**
 * An id stays as it is unless something here has it: then it is a fresh one, the same wherever the archive names it. That holds for what the
 * archive only points at as well: nobody brings in a record that claims to be of another crew's rig. A person's id stays when it is
 * theirs here too, by the same name, or nobody's.
 */
export async function renamingOf(store: Store, archive: OpenedArchive, makeId: MakeId): Promise<Renaming> {
  const fresh = new Map<string, string>();
  for (const [thing, ids] of Object.entries(thingsIn(archive)) as [Thing, readonly string[]][])
    for (const id of await takenOf(store, thing, ids)) fresh.set(`${thing} ${id}`, makeId());
  for (const id of await othersOf(store, peopleIn(archive))) fresh.set(`person ${id}`, makeId());
  return {
    of: (thing, id) => fresh.get(`${thing} ${id}`) ?? id,
    person: (id) => fresh.get(`person ${id}`) ?? id,
  };
}

function thingsIn({ crew, rigs, types, drafts, audit }: OpenedArchive): Record<Thing, readonly string[]> {
  const all = [...rigs.values()];
  const handovers = all.flatMap((rig) => rig.handovers);
  const proposals = all.flatMap((rig) => rig.proposals);
  const begun = all.flatMap(({ startedFrom }) => startedFrom ?? []);
  const some = (ids: readonly (string | null)[]) => ids.flatMap((id) => id ?? []);
  return {
    crew: some([
      crew.id,
      ...begun.map(({ crewId }) => crewId),
      ...handovers.map(({ toCrewId }) => toCrewId),
      ...proposals.map(({ fromCrewId }) => fromCrewId),
    ]),
    rig: some([
      ...all.map(({ id }) => id),
      ...begun.map(({ rigId }) => rigId),
      ...handovers.map(({ receivedId }) => receivedId),
      ...proposals.map(({ fromRigId }) => fromRigId),
      ...audit.map(({ rigId }) => rigId),
    ]),
    venue: crew.venues.map(({ id }) => id),
    type: [...types.values()].map(({ id }) => id),
    draft: [...drafts.values()].map(({ id }) => id),
    handover: handovers.map(({ id }) => id),
    proposal: proposals.map(({ id }) => id),
  };
}

async function takenOf({ sql }: Store, thing: Thing, ids: readonly string[]): Promise<readonly string[]> {
  const own = [...new Set(ids)];
  const rows = await sql.query<{ readonly id: string }>(`select id from ${TABLES[thing]} where id = any($1::text[])`, [
    own,
  ]);
  const taken = rows.map(({ id }) => id);
  return thing === 'type' ? [...taken, ...own.filter(isBuiltIn)] : taken;
}

/** Everybody an archive names by id, with the name it has of them; an empty one when it has none. */
function peopleIn({ people, rigs, types, drafts, audit }: OpenedArchive): ReadonlyMap<string, string> {
  const named = new Map<string, string>();
  const name = (id: string | null, by: string | null) => {
    if (id !== null && id !== '' && (named.get(id) ?? '') === '') named.set(id, by ?? '');
  };
  for (const person of people) name(person.id, person.name);
  for (const { by, byName } of audit) name(by, byName);
  for (const { removedBy, revisions, handovers, proposals } of rigs.values()) {
    for (const { by, byName } of revisions) name(by, byName);
    for (const each of [...handovers, ...proposals]) {
      name(each.createdBy, each.createdByName);
      name(each.decidedBy, each.decidedByName);
    }
    name(removedBy, null);
  }
  for (const { revisions } of types.values()) for (const { by } of revisions) name(by, null);
  for (const { createdBy } of drafts.values()) name(createdBy, null);
  return named;
}

/** Those of them whose id is somebody else's here. */
async function othersOf(store: Store, people: ReadonlyMap<string, string>): Promise<readonly string[]> {
  const known = await namesOf(store, [...people.keys()]);
  return [...known].flatMap(([id, name]) => (people.get(id) === name ? [] : [id]));
}
