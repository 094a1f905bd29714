import { PrismaPg } from '@prisma/adapter-pg';
import pg from 'pg';
import { START_SENTENCES } from '#words/start.ts';
import { StartRefused } from '../config/start-refused.ts';
import { applyMigrations } from './apply-migrations.ts';
import { PrismaClient } from './generated/client.ts';
import type { Sql } from './sql.ts';
import { type Store, TRANSACTION_TIMES } from './store.ts';

// Any number of our own; the schema engine uses another for itself.
const MIGRATION_LOCK = 7_214_406;
const INT8 = 20;

/** Opens a Postgres server and brings it to this version. Two processes that start at once migrate one after the other. */
export async function openPostgres(
  url: string,
  { prismaFolder, onLost }: { readonly prismaFolder: string; readonly onLost: (error: Error) => void },
): Promise<Store> {
  await migrate(url, prismaFolder);
  const prismaPool = newPool(url, { max: 8, onLost });
  const sqlPool = newPool(url, { max: 8, onLost });
  const prisma = new PrismaClient({ adapter: new PrismaPg(prismaPool), transactionOptions: TRANSACTION_TIMES });
  return {
    kind: 'postgres',
    prisma,
    sql: sqlOn(sqlPool),
    close: async () => {
      await prisma.$disconnect();
      await Promise.all([prismaPool.end(), sqlPool.end()]);
    },
  };
}

interface PoolOptions {
  readonly max: number;
  readonly onLost: (error: Error) => void;
}

function newPool(url: string, { max, onLost }: PoolOptions): pg.Pool {
  const pool = new pg.Pool({
    connectionString: url,
    max,
    keepAlive: true,
    connectionTimeoutMillis: 10_000,
    // Prisma's adapter writes times without their zone.
    onConnect: async (client) => void (await client.query("set time zone 'UTC'")),
    types: { getTypeParser: (oid, format) => (oid === INT8 ? Number : pg.types.getTypeParser(oid, format)) },
  });
  // A connection that breaks while nobody uses it: the pool drops it, and the next query opens another.
  pool.on('error', onLost);
  return pool;
}

async function migrate(url: string, prismaFolder: string): Promise<void> {
  const guard = new pg.Client({ connectionString: url, connectionTimeoutMillis: 10_000 });
  guard.on('error', () => undefined);
  try {
    await guard.connect();
  } catch (error) {
    throw new StartRefused(START_SENTENCES.noPostgres(serverOf(url), whyOf(error)), { cause: error });
  }
  const pool = newPool(url, { max: 1, onLost: () => undefined });
  try {
    await guard.query('select pg_advisory_lock($1)', [MIGRATION_LOCK]);
    const runScript = async (script: string) => void (await pool.query(script));
    await applyMigrations({ factory: new PrismaPg(pool), runScript }, prismaFolder);
  } finally {
    await pool.end();
    await guard.end();
  }
}

function sqlOn(pool: pg.Pool): Sql {
  return {
    query: (text, parameters) => rowsFrom(pool, text, parameters),
    transaction: async (work) => {
      const client = await pool.connect();
      let broken: Error | undefined;
      try {
        await client.query('begin');
        const value = await work(sqlInside(client));
        await client.query('commit');
        return value;
      } catch (error) {
        await client.query('rollback').catch((failed: Error) => {
          broken = failed;
        });
        throw error;
      } finally {
        // A connection that could not even roll back is thrown away, not handed to the next.
        client.release(broken);
      }
    },
  };
}

function sqlInside(client: pg.PoolClient): Sql {
  const sql: Sql = {
    query: (text, parameters) => rowsFrom(client, text, parameters),
    transaction: (work) => work(sql),
  };
  return sql;
}

async function rowsFrom<Row>(
  on: pg.Pool | pg.PoolClient,
  text: string,
  parameters: readonly unknown[] = [],
): Promise<readonly Row[]> {
  const { rows } = await on.query({ name: nameOf(text), text, values: [...parameters] });
  return rows as Row[];
}

const names = new Map<string, string>();

/** Statements are written in the code, and few: under a name, each connection plans one once. Halves the time of an append. */
function nameOf(text: string): string {
  const name = names.get(text) ?? `statement_${names.size}`;
  names.set(text, name);
  return name;
}

/** Host and port of a database URL, without its user and password. */
function serverOf(url: string): string {
  return URL.canParse(url) ? new URL(url).host : 'an address that cannot be read';
}

function whyOf(error: unknown): string {
  if (error instanceof AggregateError) return error.errors.map(whyOf).join('; ');
  return error instanceof Error ? error.message : String(error);
}
