import { z } from 'zod';
import { Id } from './id.ts';
import { Name } from './name.ts';

export const CreateVenue = z.object({ crewId: Id, name: Name });
export const RenameVenue = z.object({ venueId: Id, name: Name });

export interface VenueSummary {
  readonly id: string;
  readonly name: string;
  readonly crewId: string;
  readonly crewName: string;
}
