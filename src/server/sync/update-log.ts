import type { StoredRig } from '../stored/stored-rig.ts';

/** An update as a peer sent it, on its way into the log. */
export interface NewUpdate {
  readonly rig: string;
  /** User id of who sent it, as the server knows it. */
  readonly author: string;
  readonly at: Date;
  readonly bytes: Uint8Array;
}

/** Says that another process has taken the rig over: whatever this one still holds must not be written. */
export class FencedOff extends Error {
  constructor(readonly rig: string) {
    super(`rig ${rig} has a new owner`);
  }
}

/** A number that grows each time a process takes a rig over; writes under an older one are refused. */
export type Fence = number;

/** The durable log of document updates. One contract suite runs on every implementation. */
export interface UpdateLog {
  /** Takes a rig over for writing. Undefined when there is no such rig. */
  open(rig: string): Promise<{ readonly fence: Fence; readonly stored: StoredRig } | undefined>;
  /** Reads a rig without taking it over. Undefined when there is no such rig. */
  read(rig: string): Promise<StoredRig | undefined>;
  /**
   * Appends all updates in one durable statement and answers with their sequence numbers, in order. All or none are stored for a
   * rig; a rig whose fence is old answers `FencedOff` for its updates and does not hold up the others.
   */
  append(
    batch: readonly { readonly update: NewUpdate; readonly fence: Fence }[],
  ): Promise<readonly (number | FencedOff)[]>;
  /** Which of the rigs held have been taken over by another process since. */
  lost(held: readonly { readonly rig: string; readonly fence: Fence }[]): Promise<readonly string[]>;
  /** Builds a checkpoint from log rows read in one view, under a lock, and stores it. Answers its sequence number. */
  checkpoint(rig: string): Promise<number | undefined>;
  /** Deletes exactly the log rows that the newest checkpoint holds and that are older than `before`. Answers how many. */
  trim(rig: string, before: Date): Promise<number>;
}
