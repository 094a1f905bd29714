import { MessageChannel, type MessagePort, Worker } from 'node:worker_threads';
import type { Clock } from '#base/clock.ts';
import { refuse } from '#base/result.ts';
import { CAPS } from '#wire/caps.ts';
import type { GdtfJob, ReadOutcome } from './gdtf-job.ts';

/** Reads and writes `.gdtf` files beside the thread that everybody's edits go through. */
export interface GdtfWorkers {
  /** The revision in a file, or why there is none; one that takes too much time or memory is too large. */
  read(bytes: Uint8Array<ArrayBuffer>, name: string): Promise<ReadOutcome>;
  write(content: string): Promise<Uint8Array<ArrayBuffer>>;
  /** Ends the threads that wait for a file. */
  close(): void;
}

/** Threads at once; more files wait their turn. */
const THREADS = 2;
/** Megabytes of heap of one thread: the largest description that is taken needs a third of it. */
const HEAP_MB = 1024;
/** How long a thread waits for another file before it gives its memory back, in milliseconds. */
const IDLE_MS = 20_000;

export function createGdtfWorkers(clock: Clock): GdtfWorkers {
  const turn = turns(THREADS);
  const threads = createThreads(clock);
  return {
    read: (bytes, name) =>
      turn(async () => {
        const answer = await work({ kind: 'read', bytes, name }, threads, clock);
        return answer === 'too-much' ? refuse({ code: 'type-too-large' }) : (answer as ReadOutcome);
      }),
    write: (content) =>
      turn(async () => {
        const answer = await work({ kind: 'write', content }, threads, clock);
        if (answer === 'too-much') throw new Error(`a file of ${content.length} characters of content was not written`);
        return answer as Uint8Array<ArrayBuffer>;
      }),
    close: () => threads.close(),
  };
}

/** What a thread answers; `too-much` when it was stopped at its time or its memory. Whatever stopped it, it gets no other job. */
function work(job: GdtfJob, threads: Threads, clock: Clock): Promise<unknown> {
  const thread = threads.take();
  const { worker, port } = thread;
  return new Promise((resolve, reject) => {
    const settle = (how: () => void) => {
      cancel();
      worker.removeAllListeners();
      port.removeAllListeners();
      how();
    };
    const cancel = clock.after(CAPS.typeReadMs, () => {
      settle(() => resolve('too-much'));
      void worker.terminate();
    });
    port.once('message', (answer) => {
      settle(() => resolve(answer));
      threads.giveBack(thread);
    });
    worker.once('error', (error: NodeJS.ErrnoException) =>
      settle(() => (error.code === 'ERR_WORKER_OUT_OF_MEMORY' ? resolve('too-much') : reject(error))),
    );
    worker.once('exit', (code) => settle(() => reject(new Error(`the thread of a file ended with ${code}`))));
    port.postMessage(job, job.kind === 'read' ? [job.bytes.buffer] : []);
  });
}

/** A worker and the line to it. A line of its own: what reads TypeScript in a thread listens on the usual one as well. */
interface Thread {
  readonly worker: Worker;
  readonly port: MessagePort;
}

interface Threads {
  take(): Thread;
  giveBack(thread: Thread): void;
  close(): void;
}

/** Threads are started when there is a file, and wait a while for the next one. */
function createThreads(clock: Clock): Threads {
  const idle = new Map<Thread, () => void>();
  const leaveIdle = (thread: Thread) => {
    idle.get(thread)?.();
    idle.delete(thread);
    thread.worker.removeAllListeners();
  };
  const end = (thread: Thread) => {
    leaveIdle(thread);
    void thread.worker.terminate();
  };
  return {
    take: () => {
      const [waiting] = idle.keys();
      if (!waiting) return startThread();
      leaveIdle(waiting);
      return waiting;
    },
    giveBack: (thread) => {
      const cancel = clock.after(IDLE_MS, () => end(thread));
      idle.set(thread, cancel);
      // One that ends while it waits must not be handed out again.
      thread.worker.once('error', () => end(thread));
      thread.worker.once('exit', () => end(thread));
    },
    close: () => {
      for (const thread of [...idle.keys()]) end(thread);
    },
  };
}

function startThread(): Thread {
  const { port1: port, port2 } = new MessageChannel();
  const limits = { maxOldGenerationSizeMb: HEAP_MB };
  const options = { execArgv: [], resourceLimits: limits, workerData: port2, transferList: [port2] };
  return { port, worker: new Worker(WORKER, options) };
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
