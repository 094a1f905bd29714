import type { FixtureType } from '#engine/model/fixture-type.ts';
import type { DraftDetails } from '#wire/library.ts';
import { namesOf } from '../../tasks/names-of.ts';
import { onDraft } from '../procedures.ts';
import { Refused } from '../refused.ts';

/** What a draft is and whose; what stands in it comes by its sync socket. */
export const getDraft = onDraft('type.read').query(async ({ ctx, input }): Promise<DraftDetails> => {
  const { crewId, crewName, role } = ctx.draft;
  const found = await ctx.store.prisma.typeDraft.findUnique({ where: { id: input.draftId } });
  if (!found) throw new Refused('no-such-draft');
  const { id, typeId, base, baseContent, state, createdAt } = found;
  const names = await namesOf(ctx.store, [found.createdBy]);
  const baseType: FixtureType | null = baseContent === null ? null : JSON.parse(baseContent);
  const about = { id, typeId, base, by: names.get(found.createdBy) ?? '', at: createdAt.toISOString() };
  return { ...about, crewId, crewName, role, state, baseType };
});
