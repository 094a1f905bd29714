import type { FixtureType } from '#engine/model/fixture-type.ts';
import type { TypeDetails, TypeRevision, TypeRevisionSummary } from '#wire/library.ts';
import type { Store } from '../../db/store.ts';
import { type BuiltInType, findBuiltIn, isBuiltIn } from './built-in-types.ts';
import { openDrafts } from './open-drafts.ts';
import { typeSummaries } from './type-summaries.ts';

/** A type of a crew's library as somebody of that crew names it. */
export interface TypeOfCrew {
  readonly crewId: string;
  readonly typeId: string;
}

/** A type with its newest revision whole and what was before it. Undefined when the library has none of that id. */
export async function readType(store: Store, { crewId, typeId }: TypeOfCrew): Promise<TypeDetails | undefined> {
  if (isBuiltIn(typeId)) return builtInDetails(await findBuiltIn(typeId));
  const [summary] = await typeSummaries(store, { crewId, typeId });
  const newest = summary && (await readRevision(store, { crewId, typeId, number: summary.revision }));
  if (!newest) return undefined;
  return {
    summary,
    newest,
    revisions: await listRevisions(store, typeId),
    drafts: await openDrafts(store, { crewId, typeId }),
  };
}

export async function typeIsThere(store: Store, { crewId, typeId }: TypeOfCrew): Promise<boolean> {
  if (isBuiltIn(typeId)) return (await findBuiltIn(typeId)) !== undefined;
  const where = { id: typeId, crewId, removedAt: null };
  return (await store.prisma.fixtureType.findFirst({ where, select: { id: true } })) !== null;
}

/** One revision whole. Undefined when the library has no such type, or the type no such revision. */
export async function readRevision(
  store: Store,
  { crewId, typeId, number }: TypeOfCrew & { readonly number: number },
): Promise<TypeRevision | undefined> {
  if (isBuiltIn(typeId)) return number === 0 ? builtInDetails(await findBuiltIn(typeId))?.newest : undefined;
  const [row] = await store.sql.query<RevisionRow & Pick<TypeRevision, 'report'> & { readonly content: string }>(
    `select ${SUMMARY}, r.report, r.content
       from fixture_type t join type_revision r on r.type_id = t.id ${AUTHOR}
      where t.crew_id = $1 and t.id = $2 and t.removed_at is null and r.number = $3`,
    [crewId, typeId, number],
  );
  if (!row) return undefined;
  const { content, report, ...summary } = row;
  const type: FixtureType = JSON.parse(content);
  return { ...spelled(summary), report, type };
}

type RevisionRow = Omit<TypeRevisionSummary, 'at'> & { readonly at: Date };

const SUMMARY = `r.number, r.hash, r.at, coalesce(u.name, a.name, '') as by, r.note, r.origin::text as origin`;
/** Who made a revision: a person with an account, or one whom an archive named. */
const AUTHOR = 'left join "user" u on u.id = r.by left join author a on a.id = r.by';

const spelled = (row: RevisionRow): TypeRevisionSummary => ({ ...row, at: row.at.toISOString() });

async function listRevisions(store: Store, typeId: string): Promise<readonly TypeRevisionSummary[]> {
  const rows = await store.sql.query<RevisionRow>(
    `select ${SUMMARY} from type_revision r ${AUTHOR}
      where r.type_id = $1 order by r.number desc`,
    [typeId],
  );
  return rows.map(spelled);
}

function builtInDetails(found: BuiltInType | undefined): TypeDetails | undefined {
  if (!found) return undefined;
  const { summary, type } = found;
  const revision: TypeRevisionSummary = {
    number: summary.revision,
    hash: summary.hash,
    at: summary.changedAt,
    by: '',
    note: '',
    origin: 'built-in',
  };
  return { summary, newest: { ...revision, type, report: null }, revisions: [revision], drafts: [] };
}
