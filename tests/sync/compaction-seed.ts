import { seededRng } from '#base/rng.ts';
import type { Sql } from '#server/db/sql.ts';
import { createSqlLog } from '#server/sync/sql-log.ts';
import { newRigIn } from '#tests/support/new-rig.ts';
import { type CompactedLog, runCompaction } from './compaction.ts';
import { Held } from './held.ts';
import { type Compactor, createSplitLog } from './split-log.ts';

const nextTurn = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));

/** One seed of the compaction suite on the log that is taken apart. */
export function runSplitSeed(seed: number, compactor: Compactor): Promise<readonly string[]> {
  const rng = seededRng(seed);
  const held = new Held();
  const goOn = async () => {
    held.step(rng, 'well');
    await nextTurn();
  };
  return runCompaction({ log: createSplitLog(held, compactor), rng, steps: 60, goOn });
}

/** One seed of the compaction suite on a real store, where what happens at once is up to the store. */
export async function runStoreSeed(seed: number, sql: Sql): Promise<readonly string[]> {
  const rig = await newRigIn(sql);
  return runCompaction({ log: await logOf(sql, rig), rng: seededRng(seed), steps: 60, goOn: nextTurn });
}

async function logOf(sql: Sql, rig: string): Promise<CompactedLog> {
  const log = createSqlLog(sql);
  const opened = await log.open(rig);
  if (!opened) throw new Error(`rig ${rig} is not there`);
  return {
    async append(update) {
      const [seq] = await log.append([{ update: { ...update, rig }, fence: opened.fence }]);
      if (typeof seq !== 'number') throw new Error(`rig ${rig} was taken over`);
      return seq;
    },
    async read() {
      const stored = await log.read(rig);
      if (!stored) throw new Error(`rig ${rig} is gone`);
      return stored;
    },
    checkpoint: () => log.checkpoint(rig),
    trim: (before) => log.trim(rig, before),
  };
}
