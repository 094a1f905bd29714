import type { NewestRevisions } from '#engine/check/type-findings.ts';
import type { Store } from '../../db/store.ts';
import { builtInTypes, isBuiltIn } from './built-in-types.ts';

/** The newest revision of each of these types, as far as the crew's library has them. */
export async function newestRevisions(
  store: Store,
  { crewId, typeIds }: { readonly crewId: string; readonly typeIds: readonly string[] },
): Promise<NewestRevisions> {
  const newest = await newestStored(store, crewId, typeIds);
  const wanted = new Set(typeIds.filter(isBuiltIn));
  for (const { summary } of wanted.size === 0 ? [] : await builtInTypes()) {
    if (wanted.has(summary.id)) newest.set(summary.id, { number: summary.revision, hash: summary.hash });
  }
  return newest;
}

/** The newest revision of every type that a rig of the crew may have copied. */
export async function newestOfCrew(store: Store, crewId: string): Promise<NewestRevisions> {
  const newest = await newestStored(store, crewId, null);
  for (const { summary } of await builtInTypes())
    newest.set(summary.id, { number: summary.revision, hash: summary.hash });
  return newest;
}

async function newestStored(store: Store, crewId: string, typeIds: readonly string[] | null) {
  const rows = await store.sql.query<{ id: string; number: number; hash: string }>(
    `select t.id, r.number, r.hash
       from fixture_type t join type_revision r on r.type_id = t.id and r.number = t.newest
      where t.crew_id = $1 and t.removed_at is null and ($2::text[] is null or t.id = any($2::text[]))`,
    [crewId, typeIds?.filter((typeId) => !isBuiltIn(typeId)) ?? null],
  );
  return new Map(rows.map(({ id, number, hash }) => [id, { number, hash }]));
}
