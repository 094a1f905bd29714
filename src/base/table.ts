/**
 * An immutable table of rows keyed by `id`. Rows sit in buckets by the hash of their id, and buckets in shelves, so that
 * changing one row copies one small bucket and two short lists, and comparing two versions looks at little more than what
 * differs, whatever the size of the table; every other row stays the same object. Equal contents give an equal structure,
 * whatever order the rows came in.
 */
export interface Table<Row extends { readonly id: string }> {
  readonly size: number;
  readonly shelves: readonly Shelf<Row>[];
}

type Bucket<Row> = readonly Row[];
type Shelf<Row> = readonly Bucket<Row>[];

const BITS = 5;
const WIDTH = 1 << BITS;
const NO_ROWS: readonly never[] = Object.freeze([]);
const NO_BUCKETS: Shelf<never> = Object.freeze(new Array(WIDTH).fill(NO_ROWS));
const EMPTY: Table<never> = Object.freeze({ size: 0, shelves: Object.freeze(new Array(WIDTH).fill(NO_BUCKETS)) });

export const emptyTable = <Row extends { readonly id: string }>(): Table<Row> => EMPTY;

/** Which bucket an id belongs in, shelf and place on it in one number. */
function placeOf(id: string): number {
  let hash = 0x811c9dc5;
  for (let i = 0; i < id.length; i++) hash = Math.imul(hash ^ id.charCodeAt(i), 0x01000193);
  return (hash ^ (hash >>> 15)) & (WIDTH * WIDTH - 1);
}

const bucketAt = <Row>(shelves: readonly Shelf<Row>[], place: number) =>
  (shelves[place >>> BITS] as Shelf<Row>)[place & (WIDTH - 1)] as Bucket<Row>;

export function getRow<Row extends { readonly id: string }>(table: Table<Row>, id: string): Row | undefined {
  for (const row of bucketAt(table.shelves, placeOf(id))) if (row.id === id) return row;
  return undefined;
}

/** Every row once, in an order that depends on the ids alone. */
export function* rowsOf<Row extends { readonly id: string }>(table: Table<Row>): Generator<Row> {
  for (const shelf of table.shelves) for (const bucket of shelf) yield* bucket;
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
  const owned = new Map<number, Row[]>();
  let size = table.size;
  for (const { id, row } of changes) {
    const place = placeOf(id);
    const bucket = owned.get(place) ?? bucketAt(table.shelves, place);
    const at = placeIn(bucket, id);
    const found = bucket[at]?.id === id;
    if (row === undefined ? !found : found && bucket[at] === row) continue;
    const mine = owned.get(place) ?? bucket.slice();
    owned.set(place, mine);
    if (row === undefined) mine.splice(at, 1);
    else mine.splice(at, found ? 1 : 0, row);
    size += row === undefined ? -1 : found ? 0 : 1;
  }
  return owned.size === 0 ? table : { size, shelves: withBuckets(table.shelves, owned) };
}

function withBuckets<Row>(
  shelves: readonly Shelf<Row>[],
  buckets: ReadonlyMap<number, Bucket<Row>>,
): readonly Shelf<Row>[] {
  const copy = shelves.slice();
  for (const [place, bucket] of buckets) {
    const at = place >>> BITS;
    const mine = copy[at] === shelves[at] ? (shelves[at] as Shelf<Row>).slice() : (copy[at] as Bucket<Row>[]);
    mine[place & (WIDTH - 1)] = bucket;
    copy[at] = mine;
  }
  return copy;
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
  const buckets = new Map<number, Row[]>();
  let size = 0;
  for (const row of rows) {
    const place = placeOf(row.id);
    const bucket = buckets.get(place);
    if (bucket === undefined) buckets.set(place, [row]);
    const at = placeIn(bucket ?? NO_ROWS, row.id);
    const found = bucket?.[at]?.id === row.id;
    bucket?.splice(at, found ? 1 : 0, row);
    if (!found) size += 1;
  }
  return size === 0 ? emptyTable() : { size, shelves: withBuckets(emptyTable<Row>().shelves, buckets) };
}

/** A row that differs between two tables: `before`, `after`, or one of them where it was added or taken out. */
export interface RowDifference<Row> {
  readonly id: string;
  readonly before: Row | undefined;
  readonly after: Row | undefined;
}

/**
 * What differs between two tables: rows that are not the same object, or are in one of them only. With `isSame`, rows of one id
 * that it finds the same do not differ, whatever objects they are.
 */
export function differingRows<Row extends { readonly id: string }>(
  before: Table<Row>,
  after: Table<Row>,
  isSame?: (a: Row, b: Row) => boolean,
): RowDifference<Row>[] {
  const differing: RowDifference<Row>[] = [];
  for (let i = 0; i < WIDTH; i++) {
    const old = before.shelves[i] as Shelf<Row>;
    const now = after.shelves[i] as Shelf<Row>;
    if (Object.is(old, now)) continue;
    for (let j = 0; j < WIDTH; j++) {
      if (!Object.is(old[j], now[j])) differingIn(old[j] as Bucket<Row>, now[j] as Bucket<Row>, differing, isSame);
    }
  }
  return differing;
}

// Nearly all rows stayed the same object. `Object.is` tells so without a look at the rows, which lie far apart in memory;
// `===` would fetch every one of them.
function differingIn<Row extends { readonly id: string }>(
  a: Bucket<Row>,
  b: Bucket<Row>,
  differing: RowDifference<Row>[],
  isSame: ((a: Row, b: Row) => boolean) | undefined,
): void {
  const shorter = Math.min(a.length, b.length);
  let head = 0;
  while (head < shorter && Object.is(a[head], b[head])) head += 1;
  let tail = 0;
  while (tail < shorter - head && Object.is(a[a.length - 1 - tail], b[b.length - 1 - tail])) tail += 1;
  mergeById(a.slice(head, a.length - tail), b.slice(head, b.length - tail), differing, isSame);
}

function mergeById<Row extends { readonly id: string }>(
  a: Bucket<Row>,
  b: Bucket<Row>,
  differing: RowDifference<Row>[],
  isSame: ((a: Row, b: Row) => boolean) | undefined,
): void {
  let i = 0;
  let j = 0;
  while (i < a.length || j < b.length) {
    const order = compareIds(a[i], b[j]);
    const before = order <= 0 ? a[i] : undefined;
    const after = order >= 0 ? b[j] : undefined;
    const id = (before ?? after)?.id;
    const same = Object.is(before, after) || (before && after && isSame?.(before, after)) === true;
    if (id !== undefined && !same) differing.push({ id, before, after });
    if (order <= 0) i += 1;
    if (order >= 0) j += 1;
  }
}

/** The missing row is the later one. */
function compareIds(a: { readonly id: string } | undefined, b: { readonly id: string } | undefined): number {
  if (a === undefined || b === undefined) return a === undefined ? 1 : -1;
  if (a.id === b.id) return 0;
  return a.id < b.id ? -1 : 1;
}
