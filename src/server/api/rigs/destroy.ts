import { DestroyRig } from '#wire/rigs.ts';
import { destroyRig as destroy } from '../../tasks/removal/destroy-rig.ts';
import { onRemovedRig } from '../procedures.ts';
import { granted } from '../refused.ts';

/** Deletes a removed rig for good. */
export const destroyRig = onRemovedRig('rig.remove')
  .input(DestroyRig)
  .mutation(
    async ({ ctx, input }): Promise<null> =>
      granted(await destroy(ctx, { rigId: input.rigId, typed: input.name, by: ctx.user })),
  );
