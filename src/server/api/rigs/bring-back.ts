import { bringBackRig as bringBack } from '../../tasks/removal/bring-back-rig.ts';
import { onRemovedRig } from '../procedures.ts';
import { granted } from '../refused.ts';

/** Puts a removed rig back on everybody's list. */
export const bringBackRig = onRemovedRig('rig.remove').mutation(
  async ({ ctx, input }): Promise<null> => granted(await bringBack(ctx, { rigId: input.rigId, by: ctx.user })),
);
