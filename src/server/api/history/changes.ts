import { AskStep, type StepPage } from '#wire/history.ts';
import { indexLog } from '../../tasks/history/index-log.ts';
import { readStep } from '../../tasks/history/read-history.ts';
import { onRig } from '../procedures.ts';
import { granted } from '../refused.ts';

/** All changes of one step, page by page: an import may have made thousands. */
export const historyChanges = onRig('history.read')
  .input(AskStep)
  .query(async ({ ctx, input }): Promise<StepPage> => {
    const mark = granted(await indexLog(ctx, input.rigId));
    return readStep(ctx.store, mark, input);
  });
