/** A row of the log. `seq` counts 1, 2, 3, … without a gap per rig. */
export interface LoggedUpdate {
  readonly seq: number;
  readonly bytes: Uint8Array;
}

export interface StoredRig {
  /** The merged state of all updates up to and including `seq`; absent before the first checkpoint. */
  readonly checkpoint: LoggedUpdate | undefined;
  /** Updates after the checkpoint, ascending. */
  readonly tail: readonly LoggedUpdate[];
}
