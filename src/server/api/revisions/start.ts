import { StartRig } from '#wire/record.ts';
import type { RigSummary } from '#wire/rigs.ts';
import { may } from '../../access/policy.ts';
import { standingInCrew } from '../../access/standing.ts';
import { startRig } from '../../tasks/record/start-rig.ts';
import { onRig } from '../procedures.ts';
import { granted, Refused } from '../refused.ts';

/** A new rig, of any crew in which the person may make rigs, that begins as a revision they may read. */
export const startFromRevision = onRig('revision.read')
  .input(StartRig)
  .mutation(async ({ ctx, input }): Promise<RigSummary> => {
    const crew = await standingInCrew(ctx.store, ctx.user.id, input.crewId);
    if (!crew) throw new Refused('no-such-crew');
    if (!may(crew.role, 'rig.create')) throw new Refused('role-too-low');
    const { rigId, number, ...rest } = input;
    return granted(await startRig(ctx, { ...rest, from: { rigId, number }, by: ctx.user }));
  });
