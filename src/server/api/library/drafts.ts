import { readDraft } from '#document/draft/draft-reader.ts';
import type { NamedDraft } from '#wire/library.ts';
import { openDrafts } from '../../tasks/library/open-drafts.ts';
import { inCrew } from '../procedures.ts';

/** What the crew is writing: its open drafts, the last begun first, by the name each has so far. */
export const listDrafts = inCrew('type.read').query(async ({ ctx }): Promise<readonly NamedDraft[]> => {
  const named: NamedDraft[] = [];
  for (const draft of await openDrafts(ctx.store, { crewId: ctx.crew.crewId })) {
    const facts = await ctx.readDraftDoc(draft.id, (doc) => readDraft(doc).facts);
    named.push({ ...draft, maker: facts?.maker ?? '', model: facts?.model ?? '' });
  }
  return named;
});
