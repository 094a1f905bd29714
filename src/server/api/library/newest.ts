import { NewestOf, type NewestRevision } from '#wire/library.ts';
import { newestRevisions } from '../../tasks/library/newest-revisions.ts';
import { inCrew } from '../procedures.ts';

/** Which revision of each type is the newest; a type that the library does not have is left out. */
export const newestOf = inCrew('type.read')
  .input(NewestOf)
  .query(async ({ ctx, input }): Promise<readonly NewestRevision[]> => {
    const newest = await newestRevisions(ctx.store, input);
    return [...newest].map(([typeId, revision]) => ({ typeId, ...revision }));
  });
