import type { HandoverSummary } from '#wire/handovers.ts';
import { listHandovers } from '../../tasks/handover/list-handovers.ts';
import { inCrew } from '../procedures.ts';

/** The offers that the crew has made, and those it has answered. */
export const handoversOfCrew = inCrew('handover.read').query(
  ({ ctx, input }): Promise<readonly HandoverSummary[]> => listHandovers(ctx, { crewId: input.crewId }),
);
