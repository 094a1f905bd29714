import type { Meaning } from './meaning.ts';

/** Why a column has its meaning. */
export type Reason = 'heading' | 'content' | 'remembered' | 'person' | 'nothing';

export interface LayoutColumn {
  /** The words at its head, or '' when it has none. */
  readonly heading: string;
  readonly meaning: Meaning;
  readonly because: Reason;
}

/** How a list is to be read: where its headings stand and what each column means. The person may change any of it. */
export interface Layout {
  /** `own`: a patch sheet of ours, whose cells are taken exactly as they stand. */
  readonly form: 'own' | 'theirs';
  /** Index in `grid.rows` of the heading row; null when the list has none. */
  readonly headingRow: number | null;
  readonly columns: readonly LayoutColumn[];
  /** What an empty position means below a row that has one: nothing, or the same as above (a merged cell). */
  readonly blankPosition: 'blank' | 'as-above';
}

/** What a crew said of a list with these headings, to be offered the next time. Plain JSON (a type, so that it counts as such). */
export type RememberedMapping = {
  readonly key: string;
  readonly meanings: Meaning[];
  readonly blankPosition: Layout['blankPosition'];
};
