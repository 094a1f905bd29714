import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import * as Y from 'yjs';
import { ok, type Result, refuse } from '#base/result.ts';
import type { CopiedRig, CopyBatch, CopyTrouble, LocalCopy } from './local-copy.ts';

interface Row {
  readonly rig: string;
  readonly bytes: Uint8Array;
}

interface Copies extends DBSchema {
  known: { key: number; value: Row; indexes: { rig: string } };
  mine: { key: number; value: Row; indexes: { rig: string } };
  about: { key: string; value: { readonly rig: string; readonly seq: number; readonly clients: readonly number[] } };
}

type Database = IDBPDatabase<Copies>;

/** Rows of others after which they are merged into one. */
const MERGE_ROWS = 200;
const CLIENTS_KEPT = 500;
const STORES = ['known', 'mine', 'about'] as const;

/** The copy of one rig for one person in the browser's own database. Each person of this browser has a database of their own. */
export function indexedDbCopy(user: string, rig: string): LocalCopy {
  let database: Promise<Result<Database, CopyTrouble>> | undefined;
  let rowsKnown = 0;
  const withDatabase = async <T>(work: (db: Database) => Promise<T>): Promise<Result<T, CopyTrouble>> => {
    database ??= openCopies(user);
    const db = await database;
    if (!db.ok) return db;
    try {
      return ok(await work(db.value));
    } catch (error) {
      return refuse(troubleOf(error));
    }
  };
  return {
    load: () =>
      withDatabase(async (db) => {
        const copied = await readRig(db, rig);
        rowsKnown = copied.known.length;
        return copied;
      }),
    write: (batch) =>
      withDatabase(async (db) => {
        const keys = await writeBatch(db, rig, batch);
        rowsKnown += batch.known.length + batch.acknowledged.length;
        // Merging only saves room: when there is none for it, the rows stay as they are, and the batch is written all the same.
        if (rowsKnown > MERGE_ROWS) rowsKnown = await mergeKnown(db, rig).catch(() => 0);
        return keys;
      }),
    close: () => void database?.then((db) => db.ok && db.value.close()),
  };
}

/** How many edits of this person on this device the server has not acknowledged, by rig. */
export async function unsavedOnDevice(user: string): Promise<Result<ReadonlyMap<string, number>, CopyTrouble>> {
  return onceOpen(user, async (db) => {
    const counts = new Map<string, number>();
    for (const { rig } of await db.getAll('mine')) counts.set(rig, (counts.get(rig) ?? 0) + 1);
    return counts;
  });
}

/** Deletes everything this person has on this device, edits that are nowhere else included. */
export async function forgetPerson(user: string): Promise<Result<undefined, CopyTrouble>> {
  return onceOpen(user, async (db) => {
    const tx = db.transaction(STORES, 'readwrite');
    await Promise.all([...STORES.map((name) => tx.objectStore(name).clear()), tx.done]);
    return undefined;
  });
}

async function onceOpen<T>(user: string, work: (db: Database) => Promise<T>): Promise<Result<T, CopyTrouble>> {
  const db = await openCopies(user);
  if (!db.ok) return db;
  try {
    return ok(await work(db.value));
  } catch (error) {
    return refuse(troubleOf(error));
  } finally {
    db.value.close();
  }
}

async function openCopies(user: string): Promise<Result<Database, CopyTrouble>> {
  if (typeof indexedDB === 'undefined') return refuse('missing');
  try {
    const db = await openDB<Copies>(`rigledger:${user}`, 1, {
      upgrade(fresh) {
        fresh.createObjectStore('known', { autoIncrement: true }).createIndex('rig', 'rig');
        fresh.createObjectStore('mine', { autoIncrement: true }).createIndex('rig', 'rig');
        fresh.createObjectStore('about', { keyPath: 'rig' });
      },
    });
    return ok(db);
  } catch (error) {
    const trouble = troubleOf(error);
    return refuse(trouble === 'full' ? trouble : 'missing');
  }
}

async function readRig(db: Database, rig: string): Promise<CopiedRig> {
  const tx = db.transaction(STORES, 'readonly');
  const mineIndex = tx.objectStore('mine').index('rig');
  const [known, mine, keys, about] = await Promise.all([
    tx.objectStore('known').index('rig').getAll(rig),
    mineIndex.getAll(rig),
    mineIndex.getAllKeys(rig),
    tx.objectStore('about').get(rig),
    tx.done,
  ]);
  return {
    known: known.map((row) => row.bytes),
    mine: mine.flatMap((row, nth) => {
      const key = keys[nth];
      return key === undefined ? [] : { key, bytes: row.bytes };
    }),
    seq: about?.seq ?? 0,
    clients: about?.clients ?? [],
  };
}

async function writeBatch(db: Database, rig: string, batch: CopyBatch): Promise<readonly number[]> {
  // Said to be on this device only once the device has it, where the browser can tell.
  const tx = db.transaction(STORES, 'readwrite', { durability: batch.mine.length > 0 ? 'strict' : 'relaxed' });
  const known = tx.objectStore('known');
  const mine = tx.objectStore('mine');
  const moves = batch.acknowledged.map(async (key) => {
    const row = await mine.get(key);
    if (row) await Promise.all([known.add(row), mine.delete(key)]);
  });
  const about = tx.objectStore('about');
  const note = about.get(rig).then((before) => {
    const clients = [...new Set([...(before?.clients ?? []), batch.client])].slice(-CLIENTS_KEPT);
    return about.put({ rig, seq: Math.max(before?.seq ?? 0, batch.seq), clients });
  });
  const added = Promise.all(batch.mine.map((bytes) => mine.add({ rig, bytes })));
  await Promise.all([...batch.known.map((bytes) => known.add({ rig, bytes })), added, note, ...moves, tx.done]);
  return added;
}

/**
 * Merges the known rows of a rig into one and deletes exactly those; answers how many there are now. Two pages that do it at once leave
 * two merged rows, and lose nothing.
 */
async function mergeKnown(db: Database, rig: string): Promise<number> {
  const read = db.transaction('known', 'readonly').store.index('rig');
  const [rows, keys] = await Promise.all([read.getAll(rig), read.getAllKeys(rig)]);
  const doc = new Y.Doc();
  for (const row of rows) Y.applyUpdate(doc, row.bytes);
  const merged = Y.encodeStateAsUpdate(doc);
  doc.destroy();
  const tx = db.transaction('known', 'readwrite');
  await Promise.all([tx.store.add({ rig, bytes: merged }), ...keys.map((key) => tx.store.delete(key)), tx.done]);
  return 1;
}

function troubleOf(error: unknown): CopyTrouble {
  return error instanceof DOMException && error.name === 'QuotaExceededError' ? 'full' : 'failed';
}
