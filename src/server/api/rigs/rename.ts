import { RenameRig } from '#wire/rigs.ts';
import { renameRig as rename } from '../../tasks/rename-rig.ts';
import { onRig } from '../procedures.ts';

export const renameRig = onRig('rig.rename')
  .input(RenameRig)
  .mutation(async ({ ctx, input }): Promise<null> => {
    await rename(ctx, { ...input, by: ctx.user });
    return null;
  });
