import type { CrewSummary } from '#wire/crews.ts';
import { CreateCrew } from '#wire/crews.ts';
import { createCrew as create } from '../../tasks/create-crew.ts';
import { signedIn } from '../procedures.ts';
import { granted } from '../refused.ts';

/** A new crew with me as its lead. */
export const createCrew = signedIn
  .input(CreateCrew)
  .mutation(
    async ({ ctx, input }): Promise<CrewSummary> => granted(await create(ctx, { by: ctx.user, name: input.name })),
  );
