import type { Change, ChangePart } from '#engine/history/change.ts';
import type { ToldChange } from '#wire/history.ts';
import type { Store } from '../../db/store.ts';

/** A row of `rig_change`, without whose it is and when. */
export interface ChangeRow {
  readonly nth: number;
  readonly part: ChangePart;
  readonly row_id: string;
  readonly name: string;
  readonly field: string | null;
  readonly before: string | null;
  readonly after: string | null;
  readonly long: boolean;
}

/** Characters of a value as JSON, from which on it is not told: a page of changes stays small whatever somebody wrote. */
const LONG = 4_000;

/** The columns that make a `ChangeRow`. */
export const CHANGE_COLUMNS = `nth, part, row_id, left(name, ${LONG}) as name, field,
  case when length(before) > ${LONG} then null else before end as before,
  case when length(after) > ${LONG} then null else after end as after,
  coalesce(length(before) > ${LONG}, false) or coalesce(length(after) > ${LONG}, false) as long`;

export function toldOf({ nth, part, row_id, name, field, before, after, long }: ChangeRow): ToldChange {
  const value = (text: string | null) => (text === null ? null : JSON.parse(text));
  // Written by `indexLog`, which was handed a `Change`.
  const change = { part, row: row_id, field, before: value(before), after: value(after) } as Change;
  return { nth, name, long, change };
}

/** The names of people by their ids; who has no account any more is not among them. */
export async function namesOf({ prisma }: Store, ids: readonly string[]): Promise<ReadonlyMap<string, string>> {
  const users = await prisma.user.findMany({ where: { id: { in: [...ids] } }, select: { id: true, name: true } });
  return new Map(users.map(({ id, name }) => [id, name]));
}
