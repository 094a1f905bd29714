import { CreateVenue, type VenueSummary } from '#wire/venues.ts';
import { createVenue as create } from '../../tasks/create-venue.ts';
import { inCrew } from '../procedures.ts';
import { granted } from '../refused.ts';

export const createVenue = inCrew('venue.write')
  .input(CreateVenue)
  .mutation(async ({ ctx, input }): Promise<VenueSummary> => {
    const { crewId, crewName } = ctx.crew;
    const { id, name } = granted(await create(ctx, { crewId, name: input.name }));
    return { id, name, crewId, crewName };
  });
