import { assert, present } from '#base/assert.ts';
import type { Clock } from '#base/clock.ts';
import { type Fence, FencedOff, type NewUpdate, type UpdateLog } from './update-log.ts';

/** Who has updates appended: one open rig. Told of its updates in the order it handed them in. */
export interface Appender<Tag> {
  readonly fence: Fence;
  committed(list: readonly { readonly tag: Tag; readonly update: NewUpdate; readonly seq: number }[]): void;
  /**
   * Nothing of it that is still waiting will be appended, and what was on its way may or may not be in the log: memory has to be
   * read again from the log.
   */
  failed(reason: 'fenced' | 'store', error: Error): void;
}

/** Appends updates of all rigs of this process, one statement in flight; what arrives meanwhile joins the next one. */
export interface GroupCommit<Tag> {
  /** False when too much waits already; the update is then not taken. */
  submit(appender: Appender<Tag>, update: NewUpdate, tag: Tag): boolean;
  /** Resolves when nothing waits and nothing is in flight. */
  idle(): Promise<void>;
  readonly waiting: number;
}

interface Entry<Tag> {
  readonly appender: Appender<Tag>;
  readonly update: NewUpdate;
  readonly tag: Tag;
}

export interface GroupCommitOptions {
  readonly log: UpdateLog;
  readonly clock: Clock;
  /** Bytes that may wait. */
  readonly queueBytes: number;
  /** Resolves at the end of this turn of the event loop: what arrives in one turn goes in one statement. */
  readonly turn: () => Promise<void>;
  readonly onStatement?: (rows: number) => void;
}

/** Rows and bytes of one statement. */
const BATCH_ROWS = 1000;
const BATCH_BYTES = 8 * 1024 * 1024;
/**
 * A statement that takes so long counts as failed, so that one dead connection to the store does not hold up every rig. Should it still
 * commit, it does so before the rig is taken over anew, or is fenced off.
 */
const PATIENCE_MS = 30_000;

export function createGroupCommit<Tag>(options: GroupCommitOptions): GroupCommit<Tag> {
  let queue: Entry<Tag>[] = [];
  let bytes = 0;
  let busy = false;
  let idlers: (() => void)[] = [];

  const take = (): Entry<Tag>[] => {
    let size = 0;
    const over = queue.findIndex((entry, nth) => {
      size += entry.update.bytes.length;
      return nth > 0 && (nth >= BATCH_ROWS || size > BATCH_BYTES);
    });
    const batch = queue.splice(0, over < 0 ? queue.length : over);
    for (const entry of batch) bytes -= entry.update.bytes.length;
    return batch;
  };

  const giveUp = (appender: Appender<Tag>, reason: 'fenced' | 'store', error: Error): void => {
    for (const entry of queue) if (entry.appender === appender) bytes -= entry.update.bytes.length;
    queue = queue.filter((entry) => entry.appender !== appender);
    appender.failed(reason, error);
  };

  const deliver = (batch: readonly Entry<Tag>[], answers: readonly (number | FencedOff)[]): void => {
    assert(answers.length === batch.length, `${answers.length} answers to ${batch.length} updates`);
    for (const [appender, list] of byAppender(batch, answers)) {
      const lost = list.map(({ seq }) => seq).find((seq) => seq instanceof FencedOff);
      if (lost instanceof FencedOff) giveUp(appender, 'fenced', lost);
      else hand(appender, list);
    }
  };

  // A room that trips over its own updates starts again from the log; the other rooms of the batch go on.
  const hand = (appender: Appender<Tag>, list: readonly { entry: Entry<Tag>; seq: number | FencedOff }[]): void => {
    try {
      appender.committed(list.map(({ entry, seq }) => ({ tag: entry.tag, update: entry.update, seq: Number(seq) })));
    } catch (error) {
      giveUp(appender, 'store', asError(error));
    }
  };

  const pump = async (): Promise<void> => {
    if (busy) return;
    busy = true;
    while (queue.length > 0) {
      await options.turn();
      const batch = take();
      if (batch.length === 0) break;
      options.onStatement?.(batch.length);
      const answers = await append(options, batch);
      if (answers instanceof Error)
        for (const appender of new Set(batch.map((entry) => entry.appender))) giveUp(appender, 'store', answers);
      else deliver(batch, answers);
    }
    busy = false;
    const waiting = idlers;
    idlers = [];
    for (const resolve of waiting) resolve();
  };

  return {
    submit(appender, update, tag) {
      if (bytes + update.bytes.length > options.queueBytes) return false;
      queue.push({ appender, update, tag });
      bytes += update.bytes.length;
      void pump();
      return true;
    },
    idle: () => (busy ? new Promise((resolve) => idlers.push(resolve)) : Promise.resolve()),
    get waiting() {
      return queue.length;
    },
  };
}

function append<Tag>(
  { log, clock }: GroupCommitOptions,
  batch: readonly Entry<Tag>[],
): Promise<readonly (number | FencedOff)[] | Error> {
  return new Promise((resolve) => {
    const give = clock.after(PATIENCE_MS, () => resolve(new Error(`the store took over ${PATIENCE_MS / 1000} s`)));
    log.append(batch.map(({ update, appender }) => ({ update, fence: appender.fence }))).then(
      (answers) => {
        give();
        resolve(answers);
      },
      (error) => {
        give();
        resolve(asError(error));
      },
    );
  });
}

const asError = (thrown: unknown): Error => (thrown instanceof Error ? thrown : new Error(String(thrown)));

function byAppender<Tag>(batch: readonly Entry<Tag>[], answers: readonly (number | FencedOff)[]) {
  const groups = new Map<Appender<Tag>, { readonly entry: Entry<Tag>; readonly seq: number | FencedOff }[]>();
  batch.forEach((entry, nth) => {
    const group = groups.get(entry.appender) ?? [];
    groups.set(entry.appender, group);
    group.push({ entry, seq: present(answers[nth], `no answer to update ${nth}`) });
  });
  return groups;
}
