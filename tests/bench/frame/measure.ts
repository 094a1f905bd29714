export interface Timing {
  readonly median: number;
  readonly least: number;
}

/** Runs `work` a few times to warm it up, then `repeats` times; milliseconds of one run. */
export function measure(work: () => unknown, { warmUp, repeats }: { warmUp: number; repeats: number }): Timing {
  for (let i = 0; i < warmUp; i++) work();
  const times: number[] = [];
  for (let i = 0; i < repeats; i++) {
    const from = performance.now();
    work();
    times.push(performance.now() - from);
  }
  return { median: percentile(times, 0.5), least: Math.min(...times) };
}

/** The value below which the share `rank` (0 to 1) of `values` lies. */
export function percentile(values: readonly number[], rank: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * rank))] ?? Number.NaN;
}

/** `412 ns`, `3.71 µs`, `1.42 ms`, `2.40 s` of a time in milliseconds. */
export function spellTime(ms: number): string {
  if (ms >= 1000) return `${(ms / 1000).toPrecision(3)} s`;
  if (ms >= 1) return `${ms.toPrecision(3)} ms`;
  return ms >= 0.001 ? `${(ms * 1000).toPrecision(3)} µs` : `${(ms * 1e6).toPrecision(3)} ns`;
}
