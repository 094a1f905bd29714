import { createHash } from 'node:crypto';
import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PGlite } from '@electric-sql/pglite';
import { storeOn } from '#server/db/open-embedded.ts';
import { openPostgres } from '#server/db/open-postgres.ts';
import type { Store } from '#server/db/store.ts';
import { keepOnce } from './keep-once.ts';
import { startPostgres } from './postgres.ts';

export type StoreKind = Store['kind'];
export const STORE_KINDS: readonly StoreKind[] = ['embedded', 'postgres'];

export interface TestStores {
  /** A fresh, migrated, empty store. */
  open(): Promise<Store>;
  /** Closes every store that was opened, and what they ran on. */
  close(): Promise<void>;
}

const prismaFolder = join(import.meta.dirname, '../../prisma');

/** Opens stores of one kind for tests: PGlite in memory from an archive made once, or databases of one Postgres server. */
export async function testStores(kind: StoreKind): Promise<TestStores> {
  const opened: Store[] = [];
  let closing = false;
  const onLost = (error: Error) => {
    // The pool says goodbye to its connections without waiting: the server may end the last of them first.
    if (!closing) throw error;
  };
  const postgres = kind === 'postgres' ? await startPostgres() : undefined;
  return {
    open: async () => {
      const store = postgres
        ? await openPostgres(await postgres.createDatabase(), { prismaFolder, onLost })
        : await openEmbeddedCopy();
      opened.push(store);
      return store;
    },
    close: async () => {
      closing = true;
      await Promise.all(opened.map((store) => store.close()));
      await postgres?.stop();
    },
  };
}

async function openEmbeddedCopy(): Promise<Store> {
  const database = await PGlite.create({ loadDataDir: await seedArchive() });
  return storeOn(database, { prismaFolder, onClosed: async () => undefined });
}

/** Unpacks a fresh, migrated embedded store into `folder`, a data folder, so that a server started there need not make one. */
export async function seedDataFolder(folder: string): Promise<void> {
  const unpacked = join(cache, `store-${migrationsHash()}`);
  if (!existsSync(unpacked)) {
    mkdirSync(cache, { recursive: true });
    const half = mkdtempSync(`${unpacked}.`);
    const database = await PGlite.create({ dataDir: join(half, 'store'), loadDataDir: await seedArchive() });
    await database.close();
    keepOnce(half, unpacked);
  }
  cpSync(unpacked, folder, { recursive: true });
}

const cache = join(import.meta.dirname, '../../node_modules/.cache/rigledger');

/** A data folder of its own, deleted by the answer's `remove`. */
export function temporaryFolder(): { readonly folder: string; remove(): void } {
  const folder = mkdtempSync(join(tmpdir(), 'rigledger-data-'));
  return { folder, remove: () => rmSync(folder, { recursive: true, force: true }) };
}

/** The archive of a migrated, empty PGlite: made once per state of the migrations, as making one takes seconds. */
async function seedArchive(): Promise<Blob> {
  const file = join(cache, `store-${migrationsHash()}.tar`);
  if (!existsSync(file)) {
    mkdirSync(cache, { recursive: true });
    const database = await PGlite.create();
    const store = await storeOn(database, { prismaFolder, onClosed: async () => undefined });
    const archive = await database.dumpDataDir('none');
    await store.close();
    const half = `${file}.${process.pid}`;
    writeFileSync(half, Buffer.from(await archive.arrayBuffer()));
    renameSync(half, file);
  }
  return new Blob([readFileSync(file)]);
}

function migrationsHash(): string {
  const hash = createHash('sha256');
  const files = readdirSync(prismaFolder, { recursive: true, encoding: 'utf8' }).filter((name) =>
    name.endsWith('.sql'),
  );
  for (const name of files.sort()) hash.update(name).update(readFileSync(join(prismaFolder, name)));
  return hash.digest('hex').slice(0, 16);
}
