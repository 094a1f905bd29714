import { removeRig as remove } from '../../tasks/removal/remove-rig.ts';
import { onRig } from '../procedures.ts';
import { granted } from '../refused.ts';

/** Takes a rig off everybody's list and closes it for all who have it open. It can be brought back. */
export const removeRig = onRig('rig.remove').mutation(
  async ({ ctx, input }): Promise<null> => granted(await remove(ctx, { rigId: input.rigId, by: ctx.user })),
);
