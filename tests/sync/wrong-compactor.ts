import * as Y from 'yjs';
import { loadRig } from '#server/stored/load-rig.ts';
import type { LoggedUpdate, StoredRig } from '#server/stored/stored-rig.ts';
import { createMemoryLog, type MemoryLog } from '#server/sync/memory-log.ts';

/**
 * A log with a compactor that is wrong in the way that is easy to write: it builds the checkpoint from what it had in memory, and says
 * that it holds everything up to the newest row. The suites have to find it out.
 */
export function createWrongCompactor(): MemoryLog {
  const log = createMemoryLog();
  const checkpoints = new Map<string, LoggedUpdate>();
  const inMemory = new Map<string, StoredRig>();
  const stored = (rig: string): StoredRig => {
    const checkpoint = checkpoints.get(rig);
    return { checkpoint, tail: log.rows(rig).filter((row) => row.seq > (checkpoint?.seq ?? 0)) };
  };
  return {
    ...log,
    async open(rig) {
      const opened = await log.open(rig);
      return opened && { ...opened, stored: stored(rig) };
    },
    async read(rig) {
      return (await log.read(rig)) && stored(rig);
    },
    async checkpoint(rig) {
      const view = inMemory.get(rig) ?? stored(rig);
      inMemory.set(rig, stored(rig));
      const newest = log.rows(rig).at(-1)?.seq;
      if (newest === undefined) return undefined;
      checkpoints.set(rig, { seq: newest, bytes: Y.encodeStateAsUpdate(loadRig(view).doc) });
      return newest;
    },
  };
}
