/**
 * An immutable table of rows keyed by `id`. Rows sit in buckets by the hash of their id, so that changing one row copies
 * one small bucket and the list of buckets, whatever the size of the table; every other row stays the same object.
 * Equal contents give an equal structure, whatever order the rows came in.
 */
export interface Table<Row extends { readonly id: string }> {
  readonly size: number;
  readonly buckets: readonly (readonly Row[])[];
}

const BUCKETS = 1024;
const NO_ROWS: readonly never[] = Object.freeze([]);
const EMPTY: Table<never> = Object.freeze({ size: 0, buckets: Object.freeze(new Array(BUCKETS).fill(NO_ROWS)) });

export const emptyTable = <Row extends { readonly id: string }>(): Table<Row> => EMPTY;

function bucketOf(id: string): number {
  let hash = 0x811c9dc5;
  for (let i = 0; i < id.length; i++) hash = Math.imul(hash ^ id.charCodeAt(i), 0x01000193);
  return (hash ^ (hash >>> 15)) & (BUCKETS - 1);
}

export function getRow<Row extends { readonly id: string }>(table: Table<Row>, id: string): Row | undefined {
  for (const row of table.buckets[bucketOf(id)] as readonly Row[]) if (row.id === id) return row;
  return undefined;
}

/** Every row once, in an order that depends on the ids alone. */
export function* rowsOf<Row extends { readonly id: string }>(table: Table<Row>): Generator<Row> {
  for (const bucket of table.buckets) yield* bucket;
}

/** One change of a table: `row` put in (replacing any of its id), or the row of `id` taken out when `row` is undefined. */
export interface RowChange<Row> {
  readonly id: string;
  readonly row: Row | undefined;
}

/** The table with `changes` made, in order; the same table when they change nothing. */
export function changeRows<Row extends { readonly id: string }>(
  table: Table<Row>,
  changes: Iterable<RowChange<Row>>,
): Table<Row> {
  const buckets = table.buckets.slice();
  const owned = new Map<number, Row[]>();
  let size = table.size;
  for (const { id, row } of changes) {
    const index = bucketOf(id);
    const bucket = owned.get(index) ?? (buckets[index] as readonly Row[]);
    const at = placeIn(bucket, id);
    const found = bucket[at]?.id === id;
    if (row === undefined ? !found : found && bucket[at] === row) continue;
    const mine = owned.get(index) ?? bucket.slice();
    owned.set(index, mine);
    if (row === undefined) mine.splice(at, 1);
    else mine.splice(at, found ? 1 : 0, row);
    size += row === undefined ? -1 : found ? 0 : 1;
  }
  if (owned.size === 0) return table;
  for (const [index, bucket] of owned) buckets[index] = bucket;
  return { size, buckets };
}

function placeIn<Row extends { readonly id: string }>(bucket: readonly Row[], id: string): number {
  let low = 0;
  let high = bucket.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((bucket[middle] as Row).id < id) low = middle + 1;
    else high = middle;
  }
  return low;
}

export function setRow<Row extends { readonly id: string }>(table: Table<Row>, row: Row): Table<Row> {
  return changeRows(table, [{ id: row.id, row }]);
}

export function removeRow<Row extends { readonly id: string }>(table: Table<Row>, id: string): Table<Row> {
  return changeRows(table, [{ id, row: undefined }]);
}

export function tableOf<Row extends { readonly id: string }>(rows: Iterable<Row>): Table<Row> {
  const buckets: Row[][] = Array.from({ length: BUCKETS }, () => []);
  let size = 0;
  for (const row of rows) {
    const bucket = buckets[bucketOf(row.id)] as Row[];
    const at = placeIn(bucket, row.id);
    const found = bucket[at]?.id === row.id;
    bucket.splice(at, found ? 1 : 0, row);
    if (!found) size += 1;
  }
  return { size, buckets };
}

/** What differs between two tables: rows that are not the same object, or are in one of them only. */
export function differingRows<Row extends { readonly id: string }>(
  before: Table<Row>,
  after: Table<Row>,
): { readonly id: string; readonly before: Row | undefined; readonly after: Row | undefined }[] {
  const differing: { id: string; before: Row | undefined; after: Row | undefined }[] = [];
  for (let i = 0; i < BUCKETS; i++) {
    const a = before.buckets[i] as readonly Row[];
    const b = after.buckets[i] as readonly Row[];
    if (a !== b) differingIn(a, b, differing);
  }
  return differing;
}

function differingIn<Row extends { readonly id: string }>(
  a: readonly Row[],
  b: readonly Row[],
  differing: { id: string; before: Row | undefined; after: Row | undefined }[],
): void {
  let i = 0;
  let j = 0;
  while (i < a.length || j < b.length) {
    const old = a[i];
    const now = b[j];
    // Rows that stayed the same object need no look at their ids, and nearly all rows do.
    if (old === now) {
      i += 1;
      j += 1;
    } else if (now === undefined || (old !== undefined && old.id < now.id)) {
      differing.push({ id: (old as Row).id, before: old, after: undefined });
      i += 1;
    } else if (old === undefined || now.id < old.id) {
      differing.push({ id: now.id, before: undefined, after: now });
      j += 1;
    } else {
      differing.push({ id: now.id, before: old, after: now });
      i += 1;
      j += 1;
    }
  }
}
