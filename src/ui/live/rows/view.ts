import type { ColumnId } from './column.ts';

export type Grouping = 'position' | 'universe' | 'none';

export interface Sort {
  readonly column: ColumnId;
  readonly direction: 'ascending' | 'descending';
}

export interface Filter {
  /** Where the text is looked for; `any` is every column. */
  readonly column: ColumnId | 'any';
  /** Folded before comparing; empty shows every row. */
  readonly text: string;
  /** Only rows that have a finding. */
  readonly flagged: boolean;
}

/** How one person looks at the sheet. No sort means the order in which the rows were put. */
export interface View {
  readonly grouping: Grouping;
  readonly sort: Sort | null;
  readonly filter: Filter;
}

export const EVERYTHING: Filter = Object.freeze({ column: 'any', text: '', flagged: false });

export const isFiltered = (filter: Filter) => filter.text.trim() !== '' || filter.flagged;
