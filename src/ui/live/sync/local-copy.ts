import type { Result } from '#base/result.ts';

/** Why a rig cannot be kept on this device. */
export type CopyTrouble =
  /** The browser has no storage for this page, or refuses it. */
  | 'missing'
  /** The device has no room left. */
  | 'full'
  | 'failed';

/** An edit made here that the server has not acknowledged; `key` names it in this copy. */
interface KeptEdit {
  readonly key: number;
  readonly bytes: Uint8Array;
}

export interface CopiedRig {
  /** Updates the server holds too, in any order. */
  readonly known: readonly Uint8Array[];
  /** Edits made on this device that are not acknowledged, oldest first. */
  readonly mine: readonly KeptEdit[];
  /** The highest sequence number of the log that was seen here. */
  readonly seq: number;
  /** Client ids that edited the rig on this device: what they wrote is mine. */
  readonly clients: readonly number[];
}

export interface CopyBatch {
  /** Updates of others. */
  readonly known: readonly Uint8Array[];
  /** New edits of mine. */
  readonly mine: readonly Uint8Array[];
  /** Keys of edits the server has acknowledged since: from now on known. */
  readonly acknowledged: readonly number[];
  readonly seq: number;
  readonly client: number;
}

/** The copy of one rig that one person has on this device. No call throws: trouble is a value, and is shown. */
export interface LocalCopy {
  load(): Promise<Result<CopiedRig, CopyTrouble>>;
  /** Writes all of it or nothing; resolves once it is on the device. Answers a key for each of `mine`, in order. */
  write(batch: CopyBatch): Promise<Result<readonly number[], CopyTrouble>>;
  close(): void;
}
