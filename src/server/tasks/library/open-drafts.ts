import type { OpenDraftSummary } from '#wire/library.ts';
import type { Store } from '../../db/store.ts';

/** The open drafts of a crew, or only those of one of its types; the last begun first. */
export async function openDrafts(
  store: Store,
  { crewId, typeId }: { readonly crewId: string; readonly typeId?: string },
): Promise<readonly OpenDraftSummary[]> {
  const rows = await store.sql.query<Omit<OpenDraftSummary, 'at'> & { readonly at: Date }>(
    `select d.id, d.type_id as "typeId", d.base, coalesce(u.name, a.name, '') as by, d.created_at as at
       from type_draft d left join "user" u on u.id = d.created_by left join author a on a.id = d.created_by
      where d.crew_id = $1 and d.state = 'open' and ($2::text is null or d.type_id = $2)
      order by d.created_at desc, d.id`,
    [crewId, typeId ?? null],
  );
  return rows.map((row) => ({ ...row, at: row.at.toISOString() }));
}
