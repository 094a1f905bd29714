import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { MigrationList } from '@prisma/schema-engine-wasm/schema_engine_bg';

/** The migrations of a `prisma/` folder, oldest first, in the shape Prisma's schema engine takes. */
export async function readMigrations(prismaFolder: string): Promise<MigrationList> {
  const baseDir = join(prismaFolder, 'migrations');
  const entries = await readdir(baseDir, { withFileTypes: true });
  const names = entries.filter((entry) => entry.isDirectory()).map((entry) => entry.name);
  return {
    baseDir,
    lockfile: { path: 'migration_lock.toml', content: await readFile(join(baseDir, 'migration_lock.toml'), 'utf8') },
    shadowDbInitScript: '',
    migrationDirectories: await Promise.all(names.sort().map((name) => readMigration(baseDir, name))),
  };
}

async function readMigration(baseDir: string, name: string): Promise<MigrationList['migrationDirectories'][number]> {
  const value = await readFile(join(baseDir, name, 'migration.sql'), 'utf8');
  return { path: name, migrationFile: { path: 'migration.sql', content: { tag: 'ok', value } } };
}
