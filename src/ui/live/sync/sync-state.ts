import type { Person, SyncRole } from '#wire/sync/message.ts';
import type { CopyTrouble } from './local-copy.ts';

/** Where the connection stands. `stopped` stays until `nudge`: see `trouble` for why. */
type Link = 'loading' | 'offline' | 'connecting' | 'syncing' | 'live' | 'stopped';

/** Why the connection is not, or why edits do not go out. */
export type SyncTrouble =
  | 'signed-out'
  | 'no-such-rig'
  /** This page is older or newer than the server: reload it. */
  | 'other-version'
  /** One edit is larger than the server takes; it and what came after it stay on this device. */
  | 'too-large';

/**
 * Where my own edits are.
 * `saved`: every one is committed to the log of the server.
 * `saving`: on their way, and not yet known to be anywhere else than in this page.
 * `on-this-device`: written to the copy on this device, not to the server.
 * `only-in-this-page`: not even on this device; closing the page loses them.
 */
export type SaveState = 'saved' | 'saving' | 'on-this-device' | 'only-in-this-page';

/** Everything about the connection that a person may want to know. A new object whenever something changed. */
export interface SyncState {
  readonly link: Link;
  readonly trouble: SyncTrouble | undefined;
  /** Undefined until the server has said it, in this or an earlier connection of this page. */
  readonly role: SyncRole | undefined;
  readonly save: SaveState;
  /** Edits of mine that the server has not acknowledged. */
  readonly unsaved: number;
  /** Why the rig is not kept on this device; undefined when it is. */
  readonly copyTrouble: CopyTrouble | undefined;
  /** True once there is something to show: a copy from this device, or what the server has. */
  readonly filled: boolean;
  readonly people: readonly Person[];
  /** My number among `people`; undefined while not live. */
  readonly me: number | undefined;
  /** Where the log stood when it was last heard of. */
  readonly seq: number;
}
