import { RenameCrew } from '#wire/crews.ts';
import { inCrew } from '../procedures.ts';

export const renameCrew = inCrew('crew.rename')
  .input(RenameCrew)
  .mutation(async ({ ctx, input }): Promise<null> => {
    await ctx.store.prisma.crew.update({ where: { id: input.crewId }, data: { name: input.name } });
    return null;
  });
