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
