/** Everything a pasted chart may at most be. */
export const CHART_LIMITS = {
  characters: 1_000_000,
  lines: 20_000,
  /** Characters of a line; longer ones are no line of a chart and are left out. */
  line: 2_000,
  /** Columns of slots side by side. */
  modes: 16,
  /** Lines that may go on with the text of the one above. */
  wrapped: 5,
} as const;
