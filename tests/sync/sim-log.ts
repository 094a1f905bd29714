import type { LoggedUpdate } from '#server/stored/stored-rig.ts';
import { createMemoryLog, type MemoryLog } from '#server/sync/memory-log.ts';
import type { UpdateLog } from '#server/sync/update-log.ts';
import type { Held, Life } from './held.ts';

/** The log of a simulated world: it outlives every process, and remembers all that was ever committed. */
export interface SimLog {
  readonly memory: MemoryLog;
  /** Every row of the rig that was ever committed, trimmed or not, ascending. */
  readonly committed: readonly LoggedUpdate[];
  /** The log as one process reaches it: each call waits until the simulation lets it happen. */
  of(life: Life): UpdateLog;
}

export function createSimLog(rig: string, held: Held, memory: MemoryLog = createMemoryLog()): SimLog {
  const committed: LoggedUpdate[] = [];
  memory.createRig(rig);
  return {
    memory,
    committed,
    of: (life) => ({
      open: (id) => held.hold(life, () => memory.open(id)),
      read: (id) => held.hold(life, () => memory.read(id)),
      append: (batch) =>
        held.hold(life, async () => {
          const answers = await memory.append(batch);
          answers.forEach((seq, nth) => {
            const bytes = batch[nth]?.update.bytes;
            if (typeof seq === 'number' && bytes) committed.push({ seq, bytes });
          });
          return answers;
        }),
      lost: (list) => held.hold(life, () => memory.lost(list)),
      checkpoint: (id) => held.hold(life, () => memory.checkpoint(id)),
      trim: (id, before) => held.hold(life, () => memory.trim(id, before)),
    }),
  };
}
