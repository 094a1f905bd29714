import type { SyncRole } from '#wire/sync/message.ts';

/** What a person may do on a rig, as decided when they connect and again whenever that may have changed. */
export interface Pass {
  readonly user: string;
  readonly name: string;
  readonly role: SyncRole;
}
