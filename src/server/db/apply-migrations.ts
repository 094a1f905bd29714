import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { SqlDriverAdapter, SqlMigrationAwareDriverAdapterFactory } from '@prisma/driver-adapter-utils';
import { START_SENTENCES } from '#words/start.ts';
import { StartRefused } from '../config/start-refused.ts';
import { readMigrations } from './read-migrations.ts';
import { openSchemaEngine } from './schema-engine.ts';

/** How a database takes its migrations. */
export interface Migratable {
  readonly factory: SqlMigrationAwareDriverAdapterFactory;
  /** Runs a script of many statements as one: all of it, or none of it with an error. */
  runScript(script: string): Promise<void>;
}

/** Applies the migrations of `prismaFolder` that the database has not got yet. Answers their names. Throws `StartRefused`. */
export async function applyMigrations(database: Migratable, prismaFolder: string): Promise<readonly string[]> {
  const datamodel = await readFile(join(prismaFolder, 'schema.prisma'), 'utf8');
  let failure: unknown;
  const runScript = (script: string) =>
    database.runScript(script).catch((error: unknown) => {
      failure = error;
      throw error;
    });
  const engine = await openSchemaEngine(wholeScripts({ ...database, runScript }), datamodel);
  try {
    const { appliedMigrationNames } = await engine.applyMigrations({
      migrationsList: await readMigrations(prismaFolder),
      filters: { externalTables: [], externalEnums: [] },
    });
    return appliedMigrationNames;
  } catch (error) {
    // The engine knows only that a script of ours failed, not why.
    throw new StartRefused(START_SENTENCES.notMigrated(whyOf(failure ?? error)), { cause: error });
  } finally {
    engine.free();
  }
}

// Both adapters treat a script too lightly: one does not wait for it, the other cuts it at every semicolon.
function wholeScripts({ factory, runScript }: Migratable): SqlMigrationAwareDriverAdapterFactory {
  const whole = async (opening: Promise<SqlDriverAdapter>) =>
    Object.assign(await opening, { executeScript: runScript });
  return {
    provider: factory.provider,
    adapterName: factory.adapterName,
    connect: () => whole(factory.connect()),
    connectToShadowDb: () => factory.connectToShadowDb(),
  };
}

function whyOf(error: unknown): string {
  const text = error instanceof Error ? error.message : String(error);
  return text.replace(/\s+/g, ' ').trim().replace(/\.$/, '');
}
