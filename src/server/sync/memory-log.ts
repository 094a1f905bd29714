import type { LoggedUpdate, StoredRig } from '../stored/stored-rig.ts';
import { buildCheckpoint } from './build-checkpoint.ts';
import { type Fence, FencedOff, type NewUpdate, type UpdateLog } from './update-log.ts';

interface Row extends LoggedUpdate {
  readonly author: string;
  readonly at: Date;
}

interface Rig {
  fence: Fence;
  head: number;
  rows: Row[];
  checkpoints: LoggedUpdate[];
}

/** The log in memory: the meaning of the contract in the fewest words. It outlives the services that are opened on it. */
export interface MemoryLog extends UpdateLog {
  createRig(rig: string): void;
  /** Every row that is there, ascending. */
  rows(rig: string): readonly Row[];
}

export function createMemoryLog(): MemoryLog {
  const rigs = new Map<string, Rig>();
  const stored = ({ rows, checkpoints }: Rig): StoredRig => {
    const checkpoint = checkpoints.at(-1);
    const after = rows.filter((row) => row.seq > (checkpoint?.seq ?? 0));
    return { checkpoint, tail: after.map(({ seq, bytes }) => ({ seq, bytes })) };
  };
  const add = (rig: Rig, { author, at, bytes }: NewUpdate): number => {
    rig.head += 1;
    rig.rows.push({ seq: rig.head, author, at, bytes: Uint8Array.from(bytes) });
    return rig.head;
  };
  return {
    createRig: (id) => void rigs.set(id, { fence: 0, head: 0, rows: [], checkpoints: [] }),
    rows: (id) => rigs.get(id)?.rows ?? [],
    async open(id) {
      const rig = rigs.get(id);
      if (!rig) return undefined;
      rig.fence += 1;
      return { fence: rig.fence, stored: stored(rig) };
    },
    async read(id) {
      const rig = rigs.get(id);
      return rig && stored(rig);
    },
    async append(batch) {
      return batch.map(({ update, fence }) => {
        const rig = rigs.get(update.rig);
        return rig?.fence === fence ? add(rig, update) : new FencedOff(update.rig);
      });
    },
    async lost(held) {
      return held.filter(({ rig, fence }) => rigs.get(rig)?.fence !== fence).map(({ rig }) => rig);
    },
    async checkpoint(id) {
      const rig = rigs.get(id);
      if (!rig) return undefined;
      const next = buildCheckpoint(stored(rig));
      if (next) rig.checkpoints = [...rig.checkpoints.slice(-1), next];
      return rig.checkpoints.at(-1)?.seq;
    },
    async trim(id, before) {
      const rig = rigs.get(id);
      const held = rig?.checkpoints.at(-1)?.seq ?? 0;
      if (!rig) return 0;
      const kept = rig.rows.filter((row) => row.seq > held || row.at >= before);
      const gone = rig.rows.length - kept.length;
      rig.rows = kept;
      return gone;
    },
  };
}
