import { z } from 'zod';
import { Id } from './id.ts';
import { Role } from './role.ts';

/** The secret part of an invitation link. */
const InvitationToken = z.string().regex(/^[a-z0-9]{1,64}$/, 'This is not an invitation link.');

export const CreateInvitation = z.object({ crewId: Id, role: Role });
export const RevokeInvitation = z.object({ crewId: Id, invitationId: Id });
export const InvitationRef = z.object({ token: InvitationToken });

export interface NewInvitation {
  readonly id: string;
  /** Path of the link, `/join/<token>`; the page puts its own address in front. */
  readonly path: string;
  readonly expiresAt: string;
}

/** What a link leads to, before it is accepted. `member` says that I am in the crew already. */
export type InvitationLook =
  | { readonly state: 'open'; readonly crewName: string; readonly role: Role; readonly member: boolean }
  | { readonly state: 'gone' | 'used' | 'expired' };
