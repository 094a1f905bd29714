import type { PrismaClient } from './generated/client.ts';
import type { Sql } from './sql.ts';

/** The open, migrated database: embedded in this process, or a Postgres server. Everything else is written against this. */
export interface Store {
  readonly kind: 'embedded' | 'postgres';
  readonly prisma: PrismaClient;
  readonly sql: Sql;
  close(): Promise<void>;
}
