import { z } from 'zod';
import { Id } from './id.ts';
import { Name } from './name.ts';
import type { Provenance } from './record.ts';
import type { Role } from './role.ts';

/** A house rig belongs to a venue; a show rig is a production's. */
export const RigKind = z.enum(['show', 'house']);
export type RigKind = z.infer<typeof RigKind>;

export const RigRef = z.object({ rigId: Id });
export const CreateRig = z.object({ crewId: Id, name: Name, kind: RigKind, venueId: Id.nullable().default(null) });
export const RenameRig = z.object({ rigId: Id, name: Name });

export interface RigSummary {
  readonly id: string;
  readonly name: string;
  readonly kind: RigKind;
  readonly crewId: string;
  readonly crewName: string;
  readonly venueId: string | null;
  readonly venueName: string | null;
  /** What I am in its crew. */
  readonly role: Role;
  /** When it was last changed; ISO 8601, UTC. */
  readonly changedAt: string;
  /** The revision of another rig that it began as; null for a rig that began empty. */
  readonly startedFrom: Provenance | null;
}
