/** Everything a pasted chart may at most be. */
export const CHART_LIMITS = {
  characters: 1_000_000,
  lines: 20_000,
  /** Characters of a line; longer ones are no line of a chart and are left out. */
  line: 1_000,
  /** Columns of a line. */
  columns: 100,
  /** Columns of a heading. */
  headings: 24,
  /** Slots all rows together have, in all modes. */
  slots: 20_000,
  /** Stretches of values of a row: there are 256 values. */
  values: 256,
  /** Slots of a row taken apart whose values go to each of them. */
  shared: 16,
  /** Columns of slots side by side. */
  modes: 16,
  /** Lines that may go on with the text of the one above. */
  wrapped: 5,
} as const;
