import { CrewRef } from '#wire/crews.ts';
import { DraftRef } from '#wire/library.ts';
import { RigRef } from '#wire/rigs.ts';
import { type Action, may } from '../access/policy.ts';
import { standingInCrew, standingOnDraft, standingOnRemovedRig, standingOnRig } from '../access/standing.ts';
import { Refused } from './refused.ts';
import { trpc } from './trpc.ts';

/** A procedure anybody may call, signed in or not. */
export const open = trpc.procedure;

/** A procedure for whoever is signed in. */
export const signedIn = open.use(({ ctx, next }) => {
  if (!ctx.user) throw new Refused('signed-out');
  return next({ ctx: { user: ctx.user } });
});

/** A procedure on the crew `crewId`, for members whose role allows `action`. A foreign crew answers as a missing one. */
export const inCrew = (action: Action) =>
  signedIn.input(CrewRef).use(async ({ ctx, input, next }) => {
    const crew = await standingInCrew(ctx.store, ctx.user.id, input.crewId);
    if (!crew) throw new Refused('no-such-crew');
    if (!may(crew.role, action)) throw new Refused('role-too-low');
    return next({ ctx: { crew } });
  });

/** A procedure on the rig `rigId`, for members of its crew whose role allows `action`. A foreign rig answers as a missing one. */
export const onRig = (action: Action) =>
  signedIn.input(RigRef).use(async ({ ctx, input, next }) => {
    const rig = await standingOnRig(ctx.store, ctx.user.id, input.rigId);
    if (!rig) throw new Refused('no-such-rig');
    if (!may(rig.role, action)) throw new Refused('role-too-low');
    return next({ ctx: { rig } });
  });

/** A procedure on the removed rig `rigId`, for members of its crew whose role allows `action`. One that is not removed answers as a missing one. */
export const onRemovedRig = (action: Action) =>
  signedIn.input(RigRef).use(async ({ ctx, input, next }) => {
    const rig = await standingOnRemovedRig(ctx.store, ctx.user.id, input.rigId);
    if (!rig) throw new Refused('no-such-removed-rig');
    if (!may(rig.role, action)) throw new Refused('role-too-low');
    return next({ ctx: { rig } });
  });

/** A procedure on the draft `draftId`, for members of its crew whose role allows `action`. A foreign draft answers as a missing one. */
export const onDraft = (action: Action) =>
  signedIn.input(DraftRef).use(async ({ ctx, input, next }) => {
    const draft = await standingOnDraft(ctx.store, ctx.user.id, input.draftId);
    if (!draft) throw new Refused('no-such-draft');
    if (!may(draft.role, action)) throw new Refused('role-too-low');
    return next({ ctx: { draft } });
  });
