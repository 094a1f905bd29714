import type { Store } from '../db/store.ts';

/**
 * The names of people by their ids, as they are called today; of whoever has no account here but wrote what an archive brought in, the
 * name it had of them. An id that nobody knows is left out.
 */
export async function namesOf(store: Store, ids: readonly string[]): Promise<ReadonlyMap<string, string>> {
  const rows = await store.sql.query<{ readonly id: string; readonly name: string }>(
    `select id, name from "user" where id = any($1::text[])
     union all
     select a.id, a.name from author a
      where a.id = any($1::text[]) and not exists (select 1 from "user" u where u.id = a.id)`,
    [[...new Set(ids)]],
  );
  return new Map(rows.map(({ id, name }) => [id, name]));
}
