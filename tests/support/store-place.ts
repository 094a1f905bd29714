import { join } from 'node:path';
import { openStore, type StoreConfig } from '#server/db/open-store.ts';
import { newRigIn } from './new-rig.ts';
import { startPostgres } from './postgres.ts';
import { type StoreKind, seedDataFolder, temporaryFolder } from './store.ts';

/** A store for a process of its own to open, and an empty rig in it. */
export interface StorePlace {
  readonly store: StoreConfig;
  readonly rig: string;
  /** The folder of the program, which holds the migrations. */
  readonly root: string;
  remove(): Promise<void>;
}

const root = join(import.meta.dirname, '../..');

export async function makeStorePlace(kind: StoreKind): Promise<StorePlace> {
  const { store, remove } = kind === 'embedded' ? await onFolder() : await onPostgres();
  const open = await openStore(store, { root, onLost: () => undefined });
  const rig = await newRigIn(open.sql);
  await open.close();
  return { store, rig, root, remove };
}

async function onFolder(): Promise<{ readonly store: StoreConfig; remove(): Promise<void> }> {
  const { folder, remove } = temporaryFolder();
  await seedDataFolder(folder);
  return { store: { kind: 'embedded', folder }, remove: async () => remove() };
}

async function onPostgres(): Promise<{ readonly store: StoreConfig; remove(): Promise<void> }> {
  const postgres = await startPostgres();
  return { store: { kind: 'postgres', url: await postgres.createDatabase() }, remove: () => postgres.stop() };
}
