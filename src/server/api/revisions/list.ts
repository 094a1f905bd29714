import type { RigRevisionSummary } from '#wire/record.ts';
import { rigRevisions } from '../../tasks/record/read-revisions.ts';
import { onRig } from '../procedures.ts';

/** The revisions of a rig, the newest first; what stands in one is read by `GET /api/rigs/:rigId/revisions/:number/:part`. */
export const listRevisions = onRig('revision.read').query(
  ({ ctx, input }): Promise<readonly RigRevisionSummary[]> => rigRevisions(ctx.store, input.rigId),
);
