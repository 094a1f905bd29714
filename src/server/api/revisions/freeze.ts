import { FreezeRig } from '#wire/record.ts';
import { freezeRig } from '../../tasks/record/freeze-rig.ts';
import { onRig } from '../procedures.ts';
import { granted } from '../refused.ts';

/** Freezes the rig as it is committed now, and answers with the number of the revision. */
export const freezeRevision = onRig('revision.freeze')
  .input(FreezeRig)
  .mutation(async ({ ctx, input }): Promise<{ readonly number: number }> => {
    const { crewId, rigName } = ctx.rig;
    return { number: granted(await freezeRig(ctx, { ...input, crewId, rigName, by: ctx.user })) };
  });
