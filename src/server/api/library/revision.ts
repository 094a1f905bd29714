import { RevisionRef, type TypeRevision } from '#wire/library.ts';
import { readRevision } from '../../tasks/library/read-type.ts';
import { inCrew } from '../procedures.ts';
import { Refused } from '../refused.ts';

/** One revision of a type, whole. */
export const getRevision = inCrew('type.read')
  .input(RevisionRef)
  .query(async ({ ctx, input }): Promise<TypeRevision> => {
    const revision = await readRevision(ctx.store, input);
    if (!revision) throw new Refused('no-such-revision');
    return revision;
  });
