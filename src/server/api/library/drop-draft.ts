import { dropDraft as drop } from '../../tasks/library/drop-draft.ts';
import { onDraft } from '../procedures.ts';
import { granted } from '../refused.ts';

/** Gives a draft up, for everybody. */
export const dropDraft = onDraft('type.write').mutation(
  async ({ ctx, input }): Promise<null> => granted(await drop(ctx, input.draftId)),
);
