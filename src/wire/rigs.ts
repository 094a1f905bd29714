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

/** `name` is typed by the person, and has to be the rig's: it is destroyed with everything that is kept of it. */
export const DestroyRig = z.object({ rigId: Id, name: z.string().max(1000) });

/** A rig that was taken off everybody's lists, and can be brought back. */
export interface RemovedRig {
  readonly id: string;
  readonly name: string;
  readonly kind: RigKind;
  /** The name of who removed it; empty when nobody knows any more. */
  readonly by: string;
  /** When it was removed, and until when it can be brought back; ISO 8601, UTC. */
  readonly at: string;
  readonly until: string;
}

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
