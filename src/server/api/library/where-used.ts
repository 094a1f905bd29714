import { TypeRef, type WhereUsed } from '#wire/library.ts';
import { typeIsThere } from '../../tasks/library/read-type.ts';
import { whereUsed as look } from '../../tasks/library/where-used.ts';
import { inCrew } from '../procedures.ts';
import { Refused } from '../refused.ts';

/** Which rigs of the crew have pinned modes of a type, and which revision of it. */
export const whereUsed = inCrew('type.read')
  .input(TypeRef)
  .query(async ({ ctx, input }): Promise<WhereUsed> => {
    if (!(await typeIsThere(ctx.store, input))) throw new Refused('no-such-type');
    return look(ctx, input);
  });
