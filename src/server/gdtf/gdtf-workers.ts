import type { Clock } from '#base/clock.ts';
import { refuse } from '#base/result.ts';
import { CAPS } from '#wire/caps.ts';
import { createThreadPool } from '../threads/thread-pool.ts';
import { workerScript } from '../threads/worker-script.ts';
import type { GdtfJob, ReadOutcome } from './gdtf-job.ts';

/** Reads and writes `.gdtf` files beside the thread that everybody's edits go through. */
export interface GdtfWorkers {
  /** The revision in a file, or why there is none; one that takes too much time or memory is too large. */
  read(bytes: Uint8Array<ArrayBuffer>, name: string): Promise<ReadOutcome>;
  write(content: string): Promise<Uint8Array<ArrayBuffer>>;
  /** Ends the threads that wait for a file. */
  close(): void;
}

const THREADS = 2;
/** The largest description that is taken needs a third of it. */
const HEAP_MB = 1024;

export function createGdtfWorkers(clock: Clock): GdtfWorkers {
  const script = workerScript(import.meta.url, 'gdtf-worker');
  const pool = createThreadPool<GdtfJob>({ script, clock, threads: THREADS, heapMb: HEAP_MB, timeMs: CAPS.typeReadMs });
  return {
    async read(bytes, name) {
      const answer = await pool.run({ kind: 'read', bytes, name }, [bytes.buffer]);
      return answer === 'too-much' ? refuse({ code: 'type-too-large' }) : (answer as ReadOutcome);
    },
    async write(content) {
      const answer = await pool.run({ kind: 'write', content });
      if (answer === 'too-much') throw new Error(`a file of ${content.length} characters of content was not written`);
      return answer as Uint8Array<ArrayBuffer>;
    },
    close: () => pool.close(),
  };
}
