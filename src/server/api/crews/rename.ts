import { RenameCrew } from '#wire/crews.ts';
import { renameCrew as rename } from '../../tasks/rename-crew.ts';
import { inCrew } from '../procedures.ts';

export const renameCrew = inCrew('crew.rename')
  .input(RenameCrew)
  .mutation(async ({ ctx, input }): Promise<null> => {
    await rename(ctx, { ...input, by: ctx.user });
    return null;
  });
