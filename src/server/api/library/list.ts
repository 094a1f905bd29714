import type { TypeSummary } from '#wire/library.ts';
import { builtInTypes } from '../../tasks/library/built-in-types.ts';
import { typeSummaries } from '../../tasks/library/type-summaries.ts';
import { inCrew } from '../procedures.ts';

/** The library of a crew: its own types by maker and model, then those that come with the program. */
export const listTypes = inCrew('type.read').query(async ({ ctx }): Promise<readonly TypeSummary[]> => {
  const own = await typeSummaries(ctx.store, { crewId: ctx.crew.crewId });
  return [...own, ...(await builtInTypes()).map(({ summary }) => summary)];
});
