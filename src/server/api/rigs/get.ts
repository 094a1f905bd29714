import type { RigSummary } from '#wire/rigs.ts';
import { rigSummaries } from '../../tasks/rig-summaries.ts';
import { onRig } from '../procedures.ts';
import { Refused } from '../refused.ts';

/** What a rig is and whose; what stands in it comes by the sync socket. */
export const getRig = onRig('rig.read').query(async ({ ctx, input }): Promise<RigSummary> => {
  const [rig] = await rigSummaries(ctx.store, { userId: ctx.user.id, rigId: input.rigId });
  if (!rig) throw new Refused('no-such-rig');
  return rig;
});
