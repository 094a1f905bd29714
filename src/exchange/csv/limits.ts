/** Everything a list may at most be. One place, so that refusals and screens say the same. */
export const LIST_LIMITS = {
  /** Bytes of a file. */
  bytes: 5_000_000,
  /** Rows of a list: more than its fixtures, since titles, headings, blank lines and the foot of a sheet count as well. */
  rows: 30_000,
  columns: 100,
  /** Fixtures all lines together make. */
  fixtures: 20_000,
  /** Fixtures one line may stand for. */
  perLine: 1_000,
} as const;
