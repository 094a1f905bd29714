import { onRig } from '../procedures.ts';

/** Takes a rig off everybody's list and closes it for all who have it open. Its log stays in the store. */
export const removeRig = onRig('rig.remove').mutation(async ({ ctx, input }): Promise<null> => {
  await ctx.store.prisma.rig.update({ where: { id: input.rigId }, data: { removedAt: new Date(ctx.clock.now()) } });
  await ctx.revoke({ rig: input.rigId });
  return null;
});
