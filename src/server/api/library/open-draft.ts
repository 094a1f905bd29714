import { OpenDraft } from '#wire/library.ts';
import { openDraft as open } from '../../tasks/library/open-draft.ts';
import { inCrew } from '../procedures.ts';
import { granted } from '../refused.ts';

/** A new draft: empty, of the next revision of a type, or of a new type that starts from a built-in one. */
export const openDraft = inCrew('type.write')
  .input(OpenDraft)
  .mutation(
    async ({ ctx, input }): Promise<{ readonly draftId: string }> =>
      granted(await open(ctx, { ...input, userId: ctx.user.id })),
  );
