/** What a bench found. `ratio` is baseline against figure (or what the bar says), both measured in this run. */
export interface Outcome {
  readonly ratio: number;
  /** With its unit: `0.41 ms`. */
  readonly figure: string;
  readonly baseline: string;
  /** Whether the bar is met. */
  readonly ok: boolean;
  /** Other figures worth keeping beside it. */
  readonly also?: Readonly<Record<string, string | number>>;
}

/** A bench is a file of `tests/bench` that exports these three. It throws when an answer is wrong, however fast. */
export interface Bench {
  readonly name: string;
  readonly bar: string;
  /** `smoke`: tiny sizes, to see that it runs and that its answers are right; its figures mean nothing. */
  run(how: { readonly smoke: boolean }): Outcome | Promise<Outcome>;
}
