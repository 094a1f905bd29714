import { type DraftPublished, PublishDraft } from '#wire/library.ts';
import { publishDraft as publish } from '../../tasks/library/publish-draft.ts';
import { onDraft } from '../procedures.ts';
import { granted } from '../refused.ts';

/** Makes a revision of what a draft says, or says what of it has to be put right first. */
export const publishDraft = onDraft('type.write')
  .input(PublishDraft)
  .mutation(
    async ({ ctx, input }): Promise<DraftPublished> =>
      granted(await publish(ctx, { ...input, crewId: ctx.draft.crewId, userId: ctx.user.id })),
  );
