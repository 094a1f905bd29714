import type { Clock } from '#base/clock.ts';
import { ok, type Result, refuse } from '#base/result.ts';
import type { NewestRevisions } from '#engine/check/type-findings.ts';
import { CAPS } from '#wire/caps.ts';
import type { LoggedUpdate, StoredRig } from '../stored/stored-rig.ts';
import { createThreadPool } from '../threads/thread-pool.ts';
import { workerScript } from '../threads/worker-script.ts';
import type { CheckedFrozen, CheckedLog, CheckedType } from './archive-job.ts';
import type { BeginOutcome, FreezeOutcome, Frozen, RecordJob } from './record-job.ts';
import type { Replayed, ReplayJob } from './replay.ts';

/** Freezes rigs, makes documents of frozen ones, replays logs and looks through archives, beside the thread that everybody's edits go through. */
export interface RecordWorkers {
  freeze(rows: StoredRig, newest: NewestRevisions): Promise<FreezeOutcome>;
  begin(frozen: Frozen): Promise<BeginOutcome>;
  /** Goes on with the replay of a log. */
  replay(job: Omit<ReplayJob, 'kind'>): Promise<Result<Replayed, 'rig-too-large'>>;
  /** The frozen text of the rig that rows of a log amount to, deflated. */
  moment(rows: StoredRig): Promise<Result<Uint8Array<ArrayBuffer>, 'rig-too-large'>>;
  /** Look through what an archive brings: the log of a document, a frozen rig with its findings, a type of a library. */
  checkLog(updates: readonly LoggedUpdate[]): Promise<CheckedLog>;
  checkFrozen(text: string, findings: string): Promise<CheckedFrozen>;
  checkType(text: string, hash: string | null): Promise<CheckedType>;
  /** Ends the threads that wait for a rig. */
  close(): void;
}

/** One at a time: there are as many processors as that beside everybody's edits. */
const THREADS = 1;
const HEAP_MB = 1024;

export function createRecordWorkers(clock: Clock): RecordWorkers {
  const script = workerScript(import.meta.url, 'record-worker');
  const pool = createThreadPool<RecordJob>({
    script,
    clock,
    threads: THREADS,
    heapMb: HEAP_MB,
    timeMs: CAPS.revisionMs,
  });
  return {
    async freeze(rows, newest) {
      const answer = await pool.run({ kind: 'freeze', rows, newest });
      return answer === 'too-much' ? refuse('rig-too-large') : (answer as FreezeOutcome);
    },
    async begin(frozen) {
      const answer = await pool.run({ kind: 'begin', frozen });
      return answer === 'too-much' ? refuse('revision-damaged') : (answer as BeginOutcome);
    },
    async replay(job) {
      const answer = await pool.run({ kind: 'replay', ...job });
      return answer === 'too-much' ? refuse('rig-too-large') : ok(answer as Replayed);
    },
    async moment(rows) {
      const answer = await pool.run({ kind: 'moment', rows });
      return answer === 'too-much' ? refuse('rig-too-large') : ok(answer as Uint8Array<ArrayBuffer>);
    },
    checkLog: async (updates) => {
      const answer = await pool.run({ kind: 'check-log', updates });
      return answer === 'too-much' ? refuse('unreadable') : (answer as CheckedLog);
    },
    checkFrozen: async (text, findings) => {
      const answer = await pool.run({ kind: 'check-frozen', text, findings });
      return answer === 'too-much' ? refuse('unreadable') : (answer as CheckedFrozen);
    },
    checkType: async (text, hash) => {
      const answer = await pool.run({ kind: 'check-type', text, hash });
      return answer === 'too-much' ? refuse('unreadable') : (answer as CheckedType);
    },
    close: () => pool.close(),
  };
}
