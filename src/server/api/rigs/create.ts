import { CreateRig, type RigSummary } from '#wire/rigs.ts';
import { createRig as create } from '../../tasks/create-rig.ts';
import { inCrew } from '../procedures.ts';
import { granted } from '../refused.ts';

/** A new, empty rig. */
export const createRig = inCrew('rig.create')
  .input(CreateRig)
  .mutation(async ({ ctx, input }): Promise<RigSummary> => granted(await create(ctx, { ...input, by: ctx.user })));
