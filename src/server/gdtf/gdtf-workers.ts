import { Worker } from 'node:worker_threads';
import type { Clock } from '#base/clock.ts';
import { refuse } from '#base/result.ts';
import { CAPS } from '#wire/caps.ts';
import type { GdtfJob, ReadOutcome } from './gdtf-job.ts';

/** Reads and writes `.gdtf` files beside the thread that everybody's edits go through. */
export interface GdtfWorkers {
  /** The revision in a file, or why there is none; one that takes too much time or memory is too large. */
  read(bytes: Uint8Array<ArrayBuffer>, name: string): Promise<ReadOutcome>;
  write(content: string): Promise<Uint8Array<ArrayBuffer>>;
}

/** Threads at once; more wait their turn. */
const THREADS = 2;
/** Megabytes of heap of one thread: the largest description that is taken needs a third of it. */
const HEAP_MB = 1024;

export function createGdtfWorkers(clock: Clock): GdtfWorkers {
  const turn = turns(THREADS);
  return {
    read: (bytes, name) =>
      turn(async () => {
        const answer = await work({ kind: 'read', bytes, name }, clock);
        return answer === 'too-much' ? refuse({ code: 'type-too-large' }) : (answer as ReadOutcome);
      }),
    write: (content) =>
      turn(async () => {
        const answer = await work({ kind: 'write', content }, clock);
        if (answer === 'too-much') throw new Error(`a file of ${content.length} characters of content was not written`);
        return answer as Uint8Array<ArrayBuffer>;
      }),
  };
}

/** What a thread of its own answers; `too-much` when it was stopped at its time or its memory. */
function work(job: GdtfJob, clock: Clock): Promise<unknown> {
  const worker = new Worker(WORKER, {
    workerData: job,
    ...(job.kind === 'read' ? { transferList: [job.bytes.buffer] } : {}),
    execArgv: [],
    resourceLimits: { maxOldGenerationSizeMb: HEAP_MB },
  });
  return new Promise((resolve, reject) => {
    const cancel = clock.after(CAPS.typeReadMs, () => {
      resolve('too-much');
      void worker.terminate();
    });
    worker.once('message', resolve);
    worker.once('error', (error: NodeJS.ErrnoException) => {
      if (error.code === 'ERR_WORKER_OUT_OF_MEMORY') resolve('too-much');
      else reject(error);
    });
    worker.once('exit', (code) => {
      cancel();
      reject(new Error(`the thread of a file ended with ${code} and said nothing`));
    });
  });
}

/** The worker stands beside this file, as a source or, once built, as a bundle. */
const WORKER = new URL(
  import.meta.url.endsWith('.ts') ? './gdtf-worker-from-source.mjs' : './gdtf-worker.mjs',
  import.meta.url,
);

/** Lets `most` pieces of work run at once, the others in the order in which they came. */
function turns(most: number): <T>(run: () => Promise<T>) => Promise<T> {
  let running = 0;
  const waiting: (() => void)[] = [];
  return async (run) => {
    if (running >= most) await new Promise<void>((resolve) => waiting.push(resolve));
    else running += 1;
    try {
      return await run();
    } finally {
      const next = waiting.shift();
      if (next) next();
      else running -= 1;
    }
  };
}
