/** Grows whenever a message changes; a client of another version is closed with `otherVersion` and reloads. */
export const SYNC_VERSION = 2;

/** The path of the sync socket of a rig. */
export const syncPath = (rig: string): string => `/sync/${encodeURIComponent(rig)}`;

/** What a connection may do: a writer's edits are taken, a reader's are not. */
export type SyncRole = 'writer' | 'reader';

/** The cell a person is in. */
export interface Where {
  readonly fixture: string;
  readonly field: string;
  /** The absolute address they carry it to at this moment, if they carry it. */
  readonly at?: number;
}

/** One connection of a person, as the server knows them; nobody can claim to be somebody else. */
export interface Person {
  /** Number of the connection in its room: two windows of one person are two. */
  readonly id: number;
  readonly user: string;
  readonly name: string;
  /** A small number, the same for every window of one person and different between people in one room. */
  readonly colour: number;
  readonly where: Where | null;
}

export type ClientMessage =
  /** The first message: what the client speaks and holds (a Yjs state vector). */
  | { readonly kind: 'hello'; readonly version: number; readonly have: Uint8Array }
  /** A document update. `counter` grows from update to update of a connection. */
  | { readonly kind: 'update'; readonly counter: number; readonly bytes: Uint8Array }
  | { readonly kind: 'presence'; readonly where: Where | null }
  | { readonly kind: 'ping' };

export type ServerMessage =
  | {
      readonly kind: 'welcome';
      readonly role: SyncRole;
      /** Where the log stands. */
      readonly seq: number;
      /** Number of this connection among `people`. */
      readonly me: number;
      /** What the server has and the client has not: a Yjs update. */
      readonly missing: Uint8Array;
      /** What the server has: a Yjs state vector. */
      readonly have: Uint8Array;
      readonly people: readonly Person[];
    }
  /** Updates of others, committed; the log stands at `seq` after them. */
  | { readonly kind: 'updates'; readonly seq: number; readonly list: readonly Uint8Array[] }
  /** The updates of this connection up to and including `counter` are committed to the log; the last of them as `seq`. */
  | { readonly kind: 'ack'; readonly counter: number; readonly seq: number }
  /** What changed among the people here. */
  | {
      readonly kind: 'people';
      readonly arrived: readonly Person[];
      readonly moved: readonly { readonly id: number; readonly where: Where | null }[];
      readonly left: readonly number[];
    }
  | { readonly kind: 'role'; readonly role: SyncRole }
  | { readonly kind: 'pong' };
