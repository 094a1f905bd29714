import * as Y from 'yjs';
import { present } from '#base/assert.ts';
import type { Clock } from '#base/clock.ts';
import type { CopyTrouble, LocalCopy } from './local-copy.ts';
import type { Entry } from './outbox.ts';

/** Keeps the copy on this device up to date: one write at a time, mine at once, what others did twice a second. */
export interface CopyKeeper {
  readonly trouble: CopyTrouble | undefined;
  /** Writes an edit of mine; its `key` is set once it is on the device. */
  keep(entry: Entry): void;
  learn(update: Uint8Array, seq: number): void;
  acknowledged(entries: readonly Entry[], seq: number): void;
  /** The copy could not be read: say so, and write the whole document when it can be written. */
  broken(trouble: CopyTrouble): void;
  /** Resolves once everything so far is written or could not be. */
  flush(): Promise<void>;
}

export interface CopyKeeperOptions {
  readonly copy: LocalCopy;
  readonly doc: Y.Doc;
  readonly clock: Clock;
  readonly changed: () => void;
}

const GATHER_MS = 500;
const RETRY_MS = 10_000;
/** An update without a change in it: no structs, no deletions. */
const NOTHING_BYTES = 2;

export function createCopyKeeper({ copy, doc, clock, changed }: CopyKeeperOptions): CopyKeeper {
  let trouble: CopyTrouble | undefined;
  let mine: Entry[] = [];
  let known: Uint8Array[] = [];
  let acknowledged: number[] = [];
  let lastSeq = 0;
  // After a failed write the copy may lack what others did: the next one carries the whole document.
  let whole = false;
  let writing: Promise<void> | undefined;
  let stopTimer: (() => void) | undefined;

  const later = (ms: number): void => {
    if (trouble === 'missing') return;
    stopTimer ??= clock.after(ms, () => {
      stopTimer = undefined;
      write();
    });
  };

  const settle = (trial: readonly Entry[], answer: Awaited<ReturnType<LocalCopy['write']>>): void => {
    writing = undefined;
    trouble = answer.ok ? undefined : answer.error;
    if (!answer.ok) {
      whole = true;
      known = [];
    } else {
      trial.forEach((entry, nth) => {
        entry.key = present(answer.value[nth], `no key for edit ${entry.counter}`);
      });
      // Acknowledged while it was being written: from the next write on it is known.
      acknowledged.push(...trial.filter((entry) => !mine.includes(entry)).flatMap((entry) => entry.key ?? []));
      mine = mine.filter((entry) => !trial.includes(entry));
    }
    changed();
    if (!answer.ok) later(RETRY_MS);
    else if (mine.length > 0) write();
    else if (known.length + acknowledged.length > 0) later(GATHER_MS);
  };

  const write = (): void => {
    if (writing || trouble === 'missing' || (mine.length + known.length + acknowledged.length === 0 && !whole)) return;
    stopTimer?.();
    stopTimer = undefined;
    const trial = [...mine];
    const batch = {
      known: whole ? [Y.encodeStateAsUpdate(doc)] : known,
      mine: trial.map((entry) => entry.bytes),
      acknowledged,
      seq: lastSeq,
      client: doc.clientID,
    };
    const acknowledgedBefore = acknowledged;
    known = [];
    // What is learned from here on is not in this batch.
    whole = false;
    acknowledged = [];
    writing = copy.write(batch).then((answer) => {
      if (!answer.ok) acknowledged = [...acknowledgedBefore, ...acknowledged];
      settle(trial, answer);
    });
  };

  return {
    get trouble() {
      return trouble;
    },
    keep(entry) {
      mine.push(entry);
      write();
    },
    learn(update, seq) {
      lastSeq = Math.max(lastSeq, seq);
      if (trouble === 'missing' || update.length <= NOTHING_BYTES) return;
      if (!whole) known.push(update);
      later(GATHER_MS);
    },
    acknowledged(entries, seq) {
      lastSeq = Math.max(lastSeq, seq);
      const unwritten = new Set(entries.filter((entry) => entry.key === undefined));
      if (!whole && trouble !== 'missing') known.push(...[...unwritten].map((entry) => entry.bytes));
      mine = mine.filter((entry) => !unwritten.has(entry));
      acknowledged.push(...entries.flatMap((entry) => entry.key ?? []));
      later(GATHER_MS);
    },
    broken(what) {
      trouble = what;
      whole = true;
      later(RETRY_MS);
    },
    async flush() {
      while (writing || (mine.length + known.length + acknowledged.length > 0 && trouble === undefined)) {
        write();
        await writing;
      }
      stopTimer?.();
    },
  };
}
