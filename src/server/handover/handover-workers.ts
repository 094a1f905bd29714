import type { Clock } from '#base/clock.ts';
import { refuse } from '#base/result.ts';
import type { NewestRevisions } from '#engine/check/type-findings.ts';
import { CAPS } from '#wire/caps.ts';
import { createThreadPool } from '../threads/thread-pool.ts';
import { workerScript } from '../threads/worker-script.ts';
import type { HandoverJob, ReadOutcome, ToWrite, WriteOutcome } from './handover-job.ts';

/** Reads and writes handover files beside the thread that everybody's edits go through, and beside the one that freezes rigs. */
export interface HandoverWorkers {
  /** `newest`: the library of the crew that takes the file, for what the rules say of the rig. */
  read(bytes: Uint8Array<ArrayBuffer>, newest: NewestRevisions): Promise<ReadOutcome>;
  write(handover: ToWrite): Promise<WriteOutcome>;
  /** Ends the threads that wait for a file. */
  close(): void;
}

const THREADS = 1;
const HEAP_MB = 1024;

export function createHandoverWorkers(clock: Clock): HandoverWorkers {
  const script = workerScript(import.meta.url, 'handover-worker');
  const timeMs = CAPS.handoverReadMs;
  const pool = createThreadPool<HandoverJob>({ script, clock, threads: THREADS, heapMb: HEAP_MB, timeMs });
  return {
    async read(bytes, newest) {
      const answer = await pool.run({ kind: 'read', bytes, newest }, [bytes.buffer]);
      return answer === 'too-much' ? refuse({ code: 'too-much' }) : (answer as ReadOutcome);
    },
    async write(handover) {
      const answer = await pool.run({ kind: 'write', handover });
      return answer === 'too-much' ? refuse('rig-too-large') : (answer as WriteOutcome);
    },
    close: () => pool.close(),
  };
}
