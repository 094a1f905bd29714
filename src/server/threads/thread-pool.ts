import { MessageChannel, type MessagePort, type Transferable, Worker } from 'node:worker_threads';
import type { Clock } from '#base/clock.ts';

export interface ThreadPoolOptions {
  /** The module that a thread runs. It is handed a port as its `workerData`, and answers each message on it with one. */
  readonly script: URL;
  readonly clock: Clock;
  /** Threads at once; more jobs wait their turn. */
  readonly threads: number;
  /** Megabytes of heap of one thread. */
  readonly heapMb: number;
  /** Milliseconds that a job may take. */
  readonly timeMs: number;
}

/** Threads for what takes longer than everybody's edits can wait. */
export interface ThreadPool<Job> {
  /** What a thread answers; `too-much` when it was stopped at its time or its memory. A bug in it rejects. */
  run(job: Job, transfer?: readonly Transferable[]): Promise<unknown>;
  /** Ends the threads that wait for a job. */
  close(): void;
}

/** How long a thread waits for another job before it gives its memory back, in milliseconds. */
const IDLE_MS = 20_000;

export function createThreadPool<Job>(options: ThreadPoolOptions): ThreadPool<Job> {
  const turn = turns(options.threads);
  const threads = createThreads(options);
  return {
    run: (job, transfer = []) => turn(() => work(job, transfer, threads, options)),
    close: () => threads.close(),
  };
}

/** Whatever stopped a thread, it gets no other job. */
function work<Job>(
  job: Job,
  transfer: readonly Transferable[],
  threads: Threads,
  { clock, timeMs }: ThreadPoolOptions,
): Promise<unknown> {
  const thread = threads.take();
  const { worker, port } = thread;
  return new Promise((resolve, reject) => {
    const settle = (how: () => void) => {
      cancel();
      worker.removeAllListeners();
      port.removeAllListeners();
      how();
    };
    const cancel = clock.after(timeMs, () => {
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
    worker.once('exit', (code) => settle(() => reject(new Error(`the thread of a job ended with ${code}`))));
    port.postMessage(job, transfer);
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

/** Threads are started when there is a job, and wait a while for the next one. */
function createThreads({ clock, script, heapMb }: ThreadPoolOptions): Threads {
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
      if (!waiting) return startThread(script, heapMb);
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

function startThread(script: URL, heapMb: number): Thread {
  const { port1: port, port2 } = new MessageChannel();
  const limits = { maxOldGenerationSizeMb: heapMb };
  const options = { execArgv: [], resourceLimits: limits, workerData: port2, transferList: [port2] };
  return { port, worker: new Worker(script, options) };
}

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
