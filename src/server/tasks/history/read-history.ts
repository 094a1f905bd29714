import type { CardKind } from '#engine/model/card.ts';
import { SEPARATOR } from '#engine/model/ids.ts';
import type { ChangeCount, HistoryFilter, HistoryPage, HistoryPerson, HistoryStep, StepPage } from '#wire/history.ts';
import type { Store } from '../../db/store.ts';
import { type FilterSql, filterSql } from './filter-sql.ts';
import type { IndexMark } from './index-mark.ts';
import { CHANGE_COLUMNS, type ChangeRow, namesOf, toldOf } from './told.ts';

/** Steps of a page, changes of a page of one step, and changes that a step tells at once. */
const STEPS = 100;
const CHANGES = 100;
const FIRST = 4;

interface Asked {
  readonly rigId: string;
  readonly filter: HistoryFilter;
  readonly cursor?: number | null | undefined;
}

/** The newest steps before the cursor that changed something of what is asked for. */
export async function readHistory(
  store: Store,
  mark: IndexMark,
  { rigId, filter, cursor }: Asked,
): Promise<HistoryPage> {
  const asked = filterSql(rigId, cursor ? Math.min(mark.seq, cursor - 1) : mark.seq, filter);
  const seqs = await store.sql.query<{ seq: number }>(
    `select seq from rig_change where ${asked.where} group by seq order by seq desc limit ${STEPS + 1}`,
    asked.values,
  );
  const shown = seqs.slice(0, STEPS).map(({ seq }) => Number(seq));
  const steps = shown.length === 0 ? [] : await readSteps(store, asked, shown);
  const next = seqs.length > STEPS ? (shown.at(-1) ?? null) : null;
  return { steps, next, unknownUntil: mark.beginsAt?.toISOString() ?? null };
}

async function readSteps(store: Store, asked: FilterSql, seqs: readonly number[]): Promise<readonly HistoryStep[]> {
  const where = `${asked.where} and seq = any($${asked.values.length + 1}::bigint[])`;
  const values = [...asked.values, seqs];
  const [counted, first] = await Promise.all([
    store.sql.query<CountRow>(
      `select seq, part, case when part = 'card' then split_part(row_id, '${SEPARATOR}', 1) end as card, field,
              case when field is not null then 'set' when before is null then 'added' else 'removed' end as what,
              count(*)::int as count
         from rig_change where ${where} group by 1, 2, 3, 4, 5 order by 1, min(nth)`,
      values,
    ),
    store.sql.query<ChangeRow & { readonly seq: number; readonly author: string; readonly at: number }>(
      `select seq, author, (extract(epoch from at) * 1000)::float8 as at, ${CHANGE_COLUMNS}
         from (select *, row_number() over (partition by seq order by nth) as place from rig_change where ${where}) as numbered
        where place <= ${FIRST} order by seq, nth`,
      values,
    ),
  ]);
  const names = await namesOf(store, [...new Set(first.map(({ author }) => author))]);
  return seqs.flatMap((seq) => {
    const rows = first.filter((row) => Number(row.seq) === seq);
    const [row] = rows;
    if (row === undefined) return [];
    const counts = counted.filter((each) => Number(each.seq) === seq).map(countOf);
    return [
      {
        seq,
        by: row.author,
        byName: names.get(row.author) ?? null,
        at: new Date(row.at).toISOString(),
        counts,
        total: counts.reduce((sum, { count }) => sum + count, 0),
        changes: rows.map(toldOf),
      },
    ];
  });
}

interface CountRow extends Omit<ChangeCount, 'card'> {
  readonly seq: number;
  readonly card: string | null;
}

const countOf = ({ part, card, what, field, count }: CountRow): ChangeCount => ({
  part,
  card: card as CardKind | null,
  what,
  field,
  count,
});

/** The changes of one step that are asked for, from the cursor on. */
export async function readStep(
  store: Store,
  mark: IndexMark,
  { rigId, filter, seq, cursor }: Asked & { readonly seq: number },
): Promise<StepPage> {
  const { where, values } = filterSql(rigId, mark.seq, filter);
  const place = values.length;
  const rows = await store.sql.query<ChangeRow>(
    `select ${CHANGE_COLUMNS} from rig_change where ${where} and seq = $${place + 1} and nth >= $${place + 2}
      order by nth limit ${CHANGES + 1}`,
    [...values, seq, cursor ?? 0],
  );
  return { changes: rows.slice(0, CHANGES).map(toldOf), next: rows[CHANGES]?.nth ?? null };
}

/** Everybody who ever changed a rig, by name; those without an account last. */
export async function readPeople(store: Store, mark: IndexMark, rigId: string): Promise<readonly HistoryPerson[]> {
  const rows = await store.sql.query<{ author: string }>(
    'select distinct author from rig_change where rig_id = $1 and seq <= $2',
    [rigId, mark.seq],
  );
  const ids = rows.map(({ author }) => author);
  const names = await namesOf(store, ids);
  const people = ids.map((id) => ({ id, name: names.get(id) ?? null }));
  return people.sort((a, b) => (a.name === null ? 1 : b.name === null ? -1 : a.name.localeCompare(b.name, 'en')));
}
