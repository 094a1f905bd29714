import type { DraftMode, DraftRepeat, DraftRow, RowField } from '#engine/draft/draft.ts';
import { withoutGuess } from '#engine/draft/guess.ts';
import { DRAFT_SCREEN_WORDS } from '#words/draft-screen.ts';

/** The columns of a chart, from left to right: each a field of its rows. */
export const CHART_COLUMNS = [
  'slots',
  'name',
  'attribute',
  'ranges',
  'default',
  'highlight',
  'break',
  'part',
  'repeat',
] as const satisfies readonly RowField[];

export type ChartColumn = (typeof CHART_COLUMNS)[number];

/** Columns one types into; a repeat is made and changed in a window of its own. */
export type TypedColumn = Exclude<ChartColumn, 'repeat'>;

export const isTyped = (column: ChartColumn): column is TypedColumn => column !== 'repeat';

/** What stands in a cell, as one line. */
export function chartCellText(row: DraftRow, column: ChartColumn, repeat: DraftRepeat | undefined): string {
  switch (column) {
    case 'attribute':
      return withoutGuess(row.attribute);
    case 'ranges':
      return row.ranges.replace(/\s*[\r\n]+\s*/g, ' · ');
    case 'repeat':
      return repeat === undefined ? '' : DRAFT_SCREEN_WORDS.times(repeat.count, repeat.name);
    default:
      return row[column];
  }
}

/** The repeat that a row belongs to. */
export const repeatOf = ({ repeats }: DraftMode, row: DraftRow): DraftRepeat | undefined =>
  repeats.find((each) => each.id === row.repeat);

/** What a cell is copied as. */
export const copiedText = (mode: DraftMode, row: DraftRow, column: ChartColumn): string =>
  isTyped(column) ? row[column] : chartCellText(row, column, repeatOf(mode, row));
