import * as Y from 'yjs';
import type { LoggedUpdate, StoredRig } from '#server/stored/stored-rig.ts';
import { buildCheckpoint } from '#server/sync/build-checkpoint.ts';
import type { NewUpdate } from '#server/sync/update-log.ts';
import type { CompactedLog } from './compaction.ts';
import type { Held } from './held.ts';

/** How a checkpoint is built: as it should be; or from everything seen so far, named after the highest number seen. */
export type Compactor = 'right' | 'by-highest-number';

interface Row extends LoggedUpdate {
  readonly at: Date;
  committed: boolean;
}

/**
 * A log taken apart: an update gets its number in one step and is committed in a later one, so that numbers become visible out of their
 * order; a checkpoint reads in one step and writes in another. Weaker than what the real stores promise.
 */
export function createSplitLog(held: Held, compactor: Compactor): CompactedLog {
  const life = { alive: true };
  const rows: Row[] = [];
  let checkpoint: LoggedUpdate | undefined;
  let head = 0;
  let lock: Promise<unknown> = Promise.resolve();
  const step = <T>(work: () => T): Promise<T> => held.hold(life, async () => work());
  const locked = <T>(work: () => Promise<T>): Promise<T> => {
    const done = lock.then(work);
    lock = done;
    return done;
  };
  const view = (): StoredRig => ({
    checkpoint,
    tail: rows.filter((row) => row.committed && row.seq > (checkpoint?.seq ?? 0)).sort((a, b) => a.seq - b.seq),
  });
  return {
    async append(update: NewUpdate) {
      const row = await step(() => {
        const fresh = { seq: ++head, bytes: update.bytes, at: update.at, committed: false };
        rows.push(fresh);
        return fresh;
      });
      return step(() => {
        row.committed = true;
        return row.seq;
      });
    },
    read: () => step(view),
    checkpoint: () =>
      locked(async () => {
        const seen = await step(view);
        const next = compactor === 'right' ? buildCheckpoint(seen) : byHighestNumber(seen);
        if (next) await step(() => (checkpoint = next));
      }),
    trim: (before) =>
      locked(() =>
        step(() => {
          const gone = rows.filter((row) => row.committed && row.at < before && row.seq <= (checkpoint?.seq ?? 0));
          for (const row of gone) rows.splice(rows.indexOf(row), 1);
        }),
      ),
  };
}

function byHighestNumber({ checkpoint, tail }: StoredRig): LoggedUpdate | undefined {
  const last = tail.at(-1);
  if (!last) return undefined;
  const doc = new Y.Doc();
  for (const { bytes } of [...(checkpoint ? [checkpoint] : []), ...tail]) Y.applyUpdate(doc, bytes);
  return { seq: last.seq, bytes: Y.encodeStateAsUpdate(doc) };
}
