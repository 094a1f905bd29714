import type { HistoryPerson } from '#wire/history.ts';
import { indexLog } from '../../tasks/history/index-log.ts';
import { readPeople } from '../../tasks/history/read-history.ts';
import { onRig } from '../procedures.ts';
import { granted } from '../refused.ts';

/** Everybody who ever changed a rig. */
export const historyPeople = onRig('history.read').query(async ({ ctx, input }): Promise<readonly HistoryPerson[]> => {
  const mark = granted(await indexLog(ctx, input.rigId));
  return readPeople(ctx.store, mark, input.rigId);
});
