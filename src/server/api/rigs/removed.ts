import type { RemovedRig } from '#wire/rigs.ts';
import { removedRigs } from '../../tasks/removal/removed-rigs.ts';
import { inCrew } from '../procedures.ts';

/** The removed rigs of a crew: who removed them, and until when each can be brought back. */
export const listRemovedRigs = inCrew('rig.read').query(
  ({ ctx }): Promise<readonly RemovedRig[]> => removedRigs(ctx.store, ctx.crew.crewId),
);
