import type { Result } from '#base/result.ts';
import { refuse } from '#base/result.ts';
import type { Refusal } from '#wire/refusal.ts';
import type { LoggedUpdate } from '../../stored/stored-rig.ts';
import type { TaskContext } from '../task-context.ts';
import { checkpointUpTo, logRows } from './log-rows.ts';

const ROWS = 2_000;

/**
 * A rig as it stood after row `seq` of its log, frozen and deflated: replayed from the newest checkpoint before it. Refused when there is
 * no such row, and when what led to it was trimmed. [HI6]
 */
export async function readMoment(
  { store, record }: Pick<TaskContext, 'store' | 'record'>,
  rigId: string,
  seq: number,
): Promise<Result<Uint8Array<ArrayBuffer>, Refusal>> {
  const rig = await store.prisma.rig.findUnique({ where: { id: rigId }, select: { head: true } });
  if (rig === null || seq > Number(rig.head)) return refuse('no-such-moment');
  let state: LoggedUpdate | undefined = await checkpointUpTo(store, rigId, seq);
  while ((state?.seq ?? 0) < seq) {
    const rows = await logRows(store, rigId, { after: state?.seq ?? 0, upTo: seq, most: ROWS });
    if (rows.length === 0) return refuse('no-such-moment');
    if (rows.at(-1)?.seq === seq) return record.moment({ checkpoint: state, tail: rows });
    const done = await record.replay({ state, rows, after: seq, most: 1 });
    if (!done.ok) return done;
    state = done.value.state;
  }
  return record.moment({ checkpoint: state, tail: [] });
}
