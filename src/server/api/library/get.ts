import { type TypeDetails, TypeRef } from '#wire/library.ts';
import { readType } from '../../tasks/library/read-type.ts';
import { inCrew } from '../procedures.ts';
import { Refused } from '../refused.ts';

/** A type with its newest revision whole, what was before it, and the drafts of what comes next. */
export const getType = inCrew('type.read')
  .input(TypeRef)
  .query(async ({ ctx, input }): Promise<TypeDetails> => {
    const type = await readType(ctx.store, input);
    if (!type) throw new Refused('no-such-type');
    return type;
  });
