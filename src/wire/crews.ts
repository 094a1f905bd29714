import { z } from 'zod';
import { Id } from './id.ts';
import { Name } from './name.ts';
import { Role } from './role.ts';

export const CrewRef = z.object({ crewId: Id });
export const CreateCrew = z.object({ name: Name });
export const RenameCrew = z.object({ crewId: Id, name: Name });
export const SetMemberRole = z.object({ crewId: Id, userId: Id, role: Role });
export const RemoveMember = z.object({ crewId: Id, userId: Id });

/** A crew as the list of my crews shows it. */
export interface CrewSummary {
  readonly id: string;
  readonly name: string;
  /** What I am in it. */
  readonly role: Role;
  readonly members: number;
  readonly rigs: number;
}

export interface CrewMember {
  readonly userId: string;
  readonly name: string;
  readonly email: string;
  readonly role: Role;
  /** ISO 8601, UTC. */
  readonly joinedAt: string;
}

/** A link that is still open. The link itself is shown once, when it is made; only its hash is kept. */
export interface OpenInvitation {
  readonly id: string;
  readonly role: Role;
  readonly createdByName: string;
  readonly createdAt: string;
  readonly expiresAt: string;
}

export interface CrewDetail {
  readonly id: string;
  readonly name: string;
  readonly role: Role;
  readonly members: readonly CrewMember[];
  /** Empty for everybody but a lead. */
  readonly invitations: readonly OpenInvitation[];
}
