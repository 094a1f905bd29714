import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import { PGlite, type Transaction } from '@electric-sql/pglite';
import { PrismaPGlite } from 'pglite-prisma-adapter';
import { START_SENTENCES } from '#words/start.ts';
import { StartRefused } from '../config/start-refused.ts';
import { applyMigrations } from './apply-migrations.ts';
import { PrismaClient } from './generated/client.ts';
import { lockFolder } from './lock-folder.ts';
import type { Sql } from './sql.ts';
import { type Store, TRANSACTION_TIMES } from './store.ts';

/**
 * Opens the embedded store under a data folder that only one process may hold, and brings it to this version. It survives any
 * death of the process; it does not promise to survive a power cut, as it never waits for the disk.
 */
export async function openEmbedded(
  folder: string,
  { prismaFolder }: { readonly prismaFolder: string },
): Promise<Store> {
  await mkdir(folder, { recursive: true }).catch((error: Error) => {
    throw new StartRefused(START_SENTENCES.folderUnusable(folder, error.message), { cause: error });
  });
  const release = await lockFolder(folder);
  try {
    const database = await PGlite.create(join(folder, 'store')).catch((error: unknown) => {
      const why = error instanceof Error ? error.message : String(error);
      throw new StartRefused(START_SENTENCES.storeDamaged(folder, why), { cause: error });
    });
    return await storeOn(database, { prismaFolder, onClosed: release });
  } catch (error) {
    await release();
    throw error;
  }
}

/** The store on a PGlite that is open already; `onClosed` runs after it is closed. */
export async function storeOn(
  database: PGlite,
  { prismaFolder, onClosed }: { readonly prismaFolder: string; readonly onClosed: () => Promise<void> },
): Promise<Store> {
  // Prisma's adapter writes times without their zone.
  await database.exec("set time zone 'UTC'");
  const factory = new PrismaPGlite(database);
  await applyMigrations({ factory, runScript: (script) => runWhole(database, script) }, prismaFolder);
  const prisma = new PrismaClient({ adapter: factory, transactionOptions: TRANSACTION_TIMES });
  return {
    kind: 'embedded',
    prisma,
    sql: {
      query: (text, parameters) => rowsFrom(database, text, parameters),
      transaction: (work) => database.transaction((tx) => work(sqlInside(tx))),
    },
    close: async () => {
      await prisma.$disconnect();
      await database.close();
      await onClosed();
    },
  };
}

async function runWhole(database: PGlite, script: string): Promise<void> {
  await database.transaction((tx) => tx.exec(script));
}

function sqlInside(tx: Transaction): Sql {
  const sql: Sql = { query: (text, parameters) => rowsFrom(tx, text, parameters), transaction: (work) => work(sql) };
  return sql;
}

async function rowsFrom<Row>(
  on: PGlite | Transaction,
  text: string,
  parameters: readonly unknown[] = [],
): Promise<readonly Row[]> {
  const { rows } = await on.query<Row>(text, [...parameters]);
  return rows;
}
