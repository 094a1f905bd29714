import { compareNatural } from '#engine/model/natural-order.ts';
import type { TypeSummary } from '#wire/library.ts';
import type { Store } from '../../db/store.ts';
import type { StoredSummary } from './revision-content.ts';

interface Row {
  readonly id: string;
  readonly maker: string;
  readonly model: string;
  readonly summary: StoredSummary;
  readonly revision: number;
  readonly hash: string;
  readonly origin: TypeSummary['origin'];
  readonly changedAt: Date;
}

/** A crew's own types as their newest revisions are, or only `typeId` among them; by maker, then model. */
export async function typeSummaries(
  store: Store,
  { crewId, typeId }: { readonly crewId: string; readonly typeId?: string },
): Promise<readonly TypeSummary[]> {
  const rows = await store.sql.query<Row>(
    `select t.id, t.maker, t.model, r.summary, r.number as revision, r.hash, r.origin::text as origin, r.at as "changedAt"
       from fixture_type t join type_revision r on r.type_id = t.id and r.number = t.newest
      where t.crew_id = $1 and t.removed_at is null and ($2::text is null or t.id = $2)`,
    [crewId, typeId ?? null],
  );
  const byName = (a: Row, b: Row) =>
    compareNatural(a.maker, b.maker) || compareNatural(a.model, b.model) || (a.id < b.id ? -1 : 1);
  return [...rows].sort(byName).map(({ summary, ...row }) => ({
    ...row,
    ...summary,
    changedAt: row.changedAt.toISOString(),
  }));
}
