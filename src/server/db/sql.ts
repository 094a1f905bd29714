/**
 * Plain SQL on the open store, for the few statements Prisma cannot say: the group commit of the update log, advisory locks.
 * Parameters are `$1`, `$2`, …; bytes go in and come out as `Uint8Array`, `bigint` columns come out as `number`.
 */
export interface Sql {
  query<Row>(text: string, parameters?: readonly unknown[]): Promise<readonly Row[]>;
  /** Runs `work` in one transaction on one connection; it commits when `work` resolves and rolls back when it throws. */
  transaction<T>(work: (sql: Sql) => Promise<T>): Promise<T>;
}
