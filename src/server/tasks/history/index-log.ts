import { setImmediate } from 'node:timers/promises';
import { ok, type Result, refuse } from '#base/result.ts';
import type { Refusal } from '#wire/refusal.ts';
import type { Store } from '../../db/store.ts';
import type { LoggedChange } from '../../record/replay.ts';
import type { LoggedUpdate } from '../../stored/stored-rig.ts';
import { storableText } from '../library/storable.ts';
import type { TaskContext } from '../task-context.ts';
import { beginningAt, type IndexMark, markOf, moveMark } from './index-mark.ts';
import { type AuthoredRow, checkpointBehind, checkpointUpTo, logRows } from './log-rows.ts';

/** How much is done at once: rows of the log in a job of the thread, changes after which a job stops, changes in a statement. */
export interface IndexSteps {
  readonly rows: number;
  readonly changes: number;
  readonly insert: number;
}

/** A statement of this size takes some ten milliseconds: on the embedded store everybody's edits wait for it. */
const STEPS: IndexSteps = { rows: 2_000, changes: 5_000, insert: 200 };

type Context = Pick<TaskContext, 'store' | 'record'>;

/** Whoever asks for the same rig in this process waits for the same work. */
const UNDER_WAY = new WeakMap<Store, Map<string, Promise<Result<IndexMark, Refusal>>>>();

/**
 * Brings the index of a rig's log up to where the log stands, and answers how far it goes. Only what lies behind the mark is worked out:
 * from the newest checkpoint before it, or from the beginning of the log. [HI5]
 */
export function indexLog(
  context: Context,
  rigId: string,
  steps: IndexSteps = STEPS,
): Promise<Result<IndexMark, Refusal>> {
  const ofStore = UNDER_WAY.get(context.store) ?? new Map<string, Promise<Result<IndexMark, Refusal>>>();
  UNDER_WAY.set(context.store, ofStore);
  const known = ofStore.get(rigId);
  if (known !== undefined) return known;
  const work = catchUp(context, rigId, steps).finally(() => ofStore.delete(rigId));
  ofStore.set(rigId, work);
  return work;
}

async function catchUp(context: Context, rigId: string, steps: IndexSteps): Promise<Result<IndexMark, Refusal>> {
  const { store, record } = context;
  const rig = await store.prisma.rig.findUnique({ where: { id: rigId }, select: { head: true } });
  if (rig === null) return refuse('no-such-rig');
  const head = Number(rig.head);
  let mark = await markOf(store, rigId);
  if (mark.seq >= head) return ok(mark);
  let state: LoggedUpdate | undefined = await checkpointUpTo(store, rigId, mark.seq);
  while (mark.seq < head) {
    const rows = await logRows(store, rigId, { after: state?.seq ?? 0, upTo: head, most: steps.rows });
    if (rows.length === 0) {
      // The beginning of the log was trimmed: what can be told begins at a checkpoint.
      const base = await checkpointBehind(store, rigId, state?.seq ?? 0);
      if (base === undefined) return ok(mark);
      state = base;
      if (base.seq > mark.seq) mark = await moveMark(store, rigId, beginningAt(base));
      continue;
    }
    const done = await record.replay({ state, rows, after: mark.seq, most: steps.changes });
    if (!done.ok) return done;
    state = done.value.state;
    if (state.seq <= mark.seq) continue;
    await insertChanges(store, rigId, { changes: done.value.changes, rows, most: steps.insert });
    mark = await moveMark(store, rigId, { ...mark, seq: state.seq });
  }
  return ok(mark);
}

interface ToInsert {
  readonly changes: readonly LoggedChange[];
  /** The rows of the log that made them. */
  readonly rows: readonly AuthoredRow[];
  readonly most: number;
}

/**
 * In small statements, so that edits get in between. What is cut off is not counted, for the mark stays; done again it is the same rows,
 * as whatever replays a log comes to the same changes: of two processes that do it at once neither harms the other.
 */
async function insertChanges({ sql }: Store, rigId: string, { changes, rows, most }: ToInsert): Promise<void> {
  const bySeq = new Map(rows.map((row) => [row.seq, row]));
  for (let from = 0; from < changes.length; from += most) {
    const part = changes.slice(from, from + most);
    const of = <T>(pick: (change: LoggedChange) => T): T[] => part.map(pick);
    // The embedded store answers without a turn of the event loop: without this one nobody's edit would be heard until all are in.
    await setImmediate();
    await sql.query(
      `insert into rig_change (rig_id, seq, nth, author, at, part, row_id, name, field, before, after)
       select $1, seq, nth, author, to_timestamp(at / 1000), part, row_id, name, field, before, after
         from unnest($2::bigint[], $3::int[], $4::text[], $5::float8[], $6::text[], $7::text[], $8::text[], $9::text[],
                     $10::text[], $11::text[]) as new(seq, nth, author, at, part, row_id, name, field, before, after)
           on conflict do nothing`,
      [
        rigId,
        of(({ seq }) => seq),
        of(({ nth }) => nth),
        of(({ seq }) => bySeq.get(seq)?.author ?? ''),
        of(({ seq }) => bySeq.get(seq)?.at ?? 0),
        of(({ change }) => change.part),
        of(({ change }) => storableText(change.row)),
        of(({ name }) => storableText(name)),
        of(({ change }) => (change.field === null ? null : storableText(change.field))),
        of(({ change }) => textOf(change.before)),
        of(({ change }) => textOf(change.after)),
      ],
    );
  }
}

// JSON escapes every sign that the store cannot hold.
const textOf = (value: unknown): string | null => (value === null ? null : JSON.stringify(value));
