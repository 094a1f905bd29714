import type { PrismaClient } from './generated/client.ts';
import type { Sql } from './sql.ts';

/** The open, migrated database: embedded in this process, or a Postgres server. Everything else is written against this. */
export interface Store {
  readonly kind: 'embedded' | 'postgres';
  readonly prisma: PrismaClient;
  readonly sql: Sql;
  close(): Promise<void>;
}

/** How long a transaction may wait for its turn and run, in milliseconds: a busy machine is slow, not broken. */
export const TRANSACTION_TIMES = { maxWait: 10_000, timeout: 10_000 } as const;
