import type { StoreKind } from '#tests/support/store.ts';

export interface ProofRun {
  /** How many times to try. */
  readonly rounds: number;
  /** The same seed gives the same tries. */
  readonly seed: number;
  readonly stores: readonly StoreKind[];
  /** A tiny run, to see that the proof works. */
  readonly smoke: boolean;
}

export interface ProofOutcome {
  readonly rounds: number;
  /** Each a sentence that says what broke and with which seed; none when the proof holds. */
  readonly faults: readonly string[];
  /** Figures worth keeping beside it. */
  readonly also?: Readonly<Record<string, string | number>>;
}

/** A proof is a file of `tests/prove` that exports these. It must be able to fail. */
export interface Proof {
  readonly name: string;
  readonly bar: string;
  /** How many rounds make a run when nobody says; and a smoke run. */
  readonly rounds: { readonly usual: number; readonly smoke: number };
  run(how: ProofRun): ProofOutcome | Promise<ProofOutcome>;
}
