import { RenameRig } from '#wire/rigs.ts';
import { onRig } from '../procedures.ts';

export const renameRig = onRig('rig.rename')
  .input(RenameRig)
  .mutation(async ({ ctx, input }): Promise<null> => {
    await ctx.store.prisma.rig.update({ where: { id: input.rigId }, data: { name: input.name } });
    return null;
  });
