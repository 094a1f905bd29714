import { setTimeout as pause } from 'node:timers/promises';
import * as Y from 'yjs';
import type { UpdateLog } from '#server/sync/update-log.ts';

/** How the store behaves at the moment. */
export type StoreMood = 'well' | 'slow' | 'refused' | 'full' | 'answer lost';

export interface FaultyLog {
  readonly log: UpdateLog;
  mood: StoreMood;
  /** What is committed, whatever anybody was told. */
  readonly committed: Y.Doc;
}

const SLOW_MS = 250;

/** A real log whose store fails as it is told to. */
export function createFaultyLog(real: UpdateLog): FaultyLog {
  const committed = new Y.Doc();
  const faulty: FaultyLog = {
    mood: 'well',
    committed,
    log: {
      ...real,
      open: async (rig) => {
        await before();
        return real.open(rig);
      },
      append: async (batch) => {
        await before();
        const answers = await real.append(batch);
        answers.forEach((seq, nth) => {
          const bytes = batch[nth]?.update.bytes;
          if (typeof seq === 'number' && bytes) Y.applyUpdate(committed, bytes);
        });
        if (faulty.mood === 'answer lost') throw new Error('the connection to the store broke');
        return answers;
      },
    },
  };
  const before = async (): Promise<void> => {
    if (faulty.mood === 'slow') await pause(SLOW_MS);
    if (faulty.mood === 'refused') throw new Error('the store refused the connection');
    if (faulty.mood === 'full') throw new Error('no space left on the device');
  };
  return faulty;
}
