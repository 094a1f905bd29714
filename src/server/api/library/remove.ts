import { TypeRef } from '#wire/library.ts';
import { removeType as remove } from '../../tasks/library/remove-type.ts';
import { inCrew } from '../procedures.ts';
import { granted } from '../refused.ts';

/** Takes a type out of the library. Rigs keep the copies of its modes that they have. */
export const removeType = inCrew('type.remove')
  .input(TypeRef)
  .mutation(async ({ ctx, input }): Promise<null> => granted(await remove(ctx, { ...input, by: ctx.user })));
