import { AskHistory, type HistoryPage } from '#wire/history.ts';
import { indexLog } from '../../tasks/history/index-log.ts';
import { readHistory } from '../../tasks/history/read-history.ts';
import { onRig } from '../procedures.ts';
import { granted } from '../refused.ts';

/** Who did what to a rig, and when: what is committed by now, the newest first. */
export const historySteps = onRig('history.read')
  .input(AskHistory)
  .query(async ({ ctx, input }): Promise<HistoryPage> => {
    const mark = granted(await indexLog(ctx, input.rigId));
    return readHistory(ctx.store, mark, input);
  });
