import { type DBSchema, openDB } from 'idb';

interface Frozen {
  readonly hash: string;
  readonly text: string;
  /** When it was kept, in milliseconds since 1970. */
  readonly at: number;
}

interface KeptRevisions extends DBSchema {
  frozen: { key: string; value: Frozen; indexes: { at: number } };
}

/** Frozen rigs a person has on this device at once; of a large house one has a few megabytes. */
const MOST = 12;

const open = (user: string) =>
  openDB<KeptRevisions>(`rigledger-frozen:${user}`, 1, {
    upgrade: (fresh) => void fresh.createObjectStore('frozen', { keyPath: 'hash' }).createIndex('at', 'at'),
  });

/** A frozen rig that this device has, by its hash: one text has one hash for ever. Undefined when it has none, or no storage. */
export async function keptRevision(user: string, hash: string): Promise<string | undefined> {
  try {
    const db = await open(user);
    const kept = await db.get('frozen', hash);
    db.close();
    return kept?.text;
  } catch {
    // No storage on this device: it is asked for anew.
    return undefined;
  }
}

/** Keeps a frozen rig on this device, so that what needs it opens without a network; the oldest go. */
export async function keepRevision(user: string, frozen: Frozen): Promise<void> {
  try {
    const db = await open(user);
    const tx = db.transaction('frozen', 'readwrite');
    await tx.store.put(frozen);
    const oldest = await tx.store.index('at').getAllKeys();
    await Promise.all(oldest.slice(0, -MOST).map((hash) => tx.store.delete(hash)));
    await tx.done;
    db.close();
  } catch {
    // No storage, or none left: the page needs the network the next time.
  }
}
