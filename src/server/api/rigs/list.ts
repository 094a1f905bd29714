import type { RigSummary } from '#wire/rigs.ts';
import { rigSummaries } from '../../tasks/rig-summaries.ts';
import { signedIn } from '../procedures.ts';

/** The rigs of all my crews, the last changed first. */
export const listRigs = signedIn.query(
  ({ ctx }): Promise<readonly RigSummary[]> => rigSummaries(ctx.store, { userId: ctx.user.id }),
);
