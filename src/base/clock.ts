/** Where time comes from. Milliseconds since 1970; real ones only at the process entry. */
export interface Clock {
  now(): number;
  /** Calls `run` once after `ms` milliseconds; the answer cancels it. */
  after(ms: number, run: () => void): () => void;
}

/** The clock of this machine. */
export const systemClock: Clock = {
  now: () => Date.now(),
  after: (ms, run) => {
    const timer = setTimeout(run, ms);
    return () => clearTimeout(timer);
  },
};
