import { z } from 'zod';
import { CrewRef } from './crews.ts';

/** What is written down of a crew's doings. Kinds are stored: new ones are added, none is renamed. */
export const AUDIT_KINDS = [
  'crew-made',
  'crew-renamed',
  'invitation-made',
  'invitation-used',
  'invitation-withdrawn',
  'role-changed',
  'member-removed',
  'member-left',
  'rig-made',
  'rig-started',
  'rig-renamed',
  'rig-removed',
  'rig-brought-back',
  'rig-destroyed',
  'frozen',
  'handover-offered',
  'handover-withdrawn',
  'handover-accepted',
  'handover-declined',
  'handover-received',
  'handover-written',
  'handover-read',
  'proposal-made',
  'proposal-accepted',
  'proposal-declined',
  'proposal-withdrawn',
  'sheet-out',
  'type-out',
  'type-removed',
  'archive-out',
  'archive-in',
] as const;
export type AuditKind = (typeof AUDIT_KINDS)[number];

/** What an entry says beside who and when: names as they were on that day. */
export interface AuditWhat {
  readonly rig?: string;
  readonly person?: string;
  readonly role?: string;
  readonly was?: string;
  readonly crew?: string;
  readonly number?: number;
  readonly sheet?: string;
  readonly type?: string;
}

/** Which entries of a crew: those before `cursor`, of one kind or of one person when that is asked for. `by` is empty for nobody. */
export const ListAudit = CrewRef.extend({
  cursor: z.number().int().positive().nullish(),
  kind: z.enum(AUDIT_KINDS).nullable().default(null),
  by: z.string().max(64).nullable().default(null),
});

export interface AuditLine {
  readonly id: number;
  /** ISO 8601, UTC. */
  readonly at: string;
  /** The name of who did it, as it was; empty when nobody did: a rig whose days were over. */
  readonly by: string;
  readonly kind: AuditKind;
  /** The rig it is about; it may be gone. */
  readonly rigId: string | null;
  readonly what: AuditWhat;
}

/** Entries, the newest first. `before` is the cursor of the ones before them; null when there are none. */
export interface AuditPage {
  readonly lines: readonly AuditLine[];
  readonly before: number | null;
}

/** Somebody of whom there are entries. */
export interface AuditPerson {
  readonly id: string;
  readonly name: string;
}
