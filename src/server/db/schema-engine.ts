import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import {
  bindMigrationAwareSqlAdapterFactory,
  type SqlMigrationAwareDriverAdapterFactory,
} from '@prisma/driver-adapter-utils';
import * as bindings from '@prisma/schema-engine-wasm/schema_engine_bg';

/**
 * Prisma's schema engine as WebAssembly, speaking to the database through the same driver adapter as the client. The native
 * engine of the Prisma command line is downloaded at run time, which an offline machine cannot do; this one comes with the packages.
 */
export async function openSchemaEngine(
  factory: SqlMigrationAwareDriverAdapterFactory,
  datamodel: string,
): Promise<bindings.SchemaEngine> {
  instantiated ??= instantiate();
  await instantiated;
  const log = () => undefined;
  const adapter = bindMigrationAwareSqlAdapterFactory(factory);
  return bindings.SchemaEngine.new({ datamodels: [['schema.prisma', datamodel]] }, log, adapter);
}

let instantiated: Promise<void> | undefined;

async function instantiate(): Promise<void> {
  const script = createRequire(import.meta.url).resolve('@prisma/schema-engine-wasm/schema_engine_bg');
  const bytes = await readFile(script.replace(/\.js$/, '.wasm'));
  const imports = { './schema_engine_bg.js': { ...bindings } };
  const { instance } = await WebAssembly.instantiate(bytes, imports);
  bindings.__wbg_set_wasm(instance.exports);
  (instance.exports as { __wbindgen_start(): void }).__wbindgen_start();
}
