import { memo } from 'react';
import type { DraftRepeat, DraftRow, RowField } from '#engine/draft/draft.ts';
import { type DraftTrouble, stopsPublishing } from '#engine/draft/draft-trouble.ts';
import { isGuess } from '#engine/draft/guess.ts';
import type { Severity } from '#engine/model/finding.ts';
import { DRAFT_SCREEN_WORDS } from '#words/draft-screen.ts';
import type { PersonHere } from '../../live/link.ts';
import type { Desk } from '../desk.ts';
import { ChartCellView } from './chart-cell.tsx';
import { CHART_COLUMNS, type ChartColumn } from './chart-columns.ts';
import { ChartMargin } from './chart-margin.tsx';
import { OpenChartCell } from './open-chart-cell.tsx';

export interface ChartRowProps {
  readonly desk: Desk;
  readonly row: DraftRow;
  /** The one it belongs to. */
  readonly repeat: DraftRepeat | undefined;
  /** Line from 0. */
  readonly line: number;
  /** Prefix of the ids of cells. */
  readonly gridId: string;
  readonly troubles: readonly DraftTrouble[];
  readonly people: readonly PersonHere[];
  /** First and last selected column, from 0; -1 when no cell of this row is. */
  readonly from: number;
  readonly to: number;
  /** The column the cursor is in; undefined when it is in another row. */
  readonly cursor: ChartColumn | undefined;
  readonly state: 'shown' | 'open';
}

/** One row of a chart, with what there is to check about it beside it. */
export const ChartRow = memo(function ChartRow(props: ChartRowProps) {
  const { desk, row, line, gridId, troubles, cursor } = props;
  const alone = cursor !== undefined && props.from === props.to;
  return (
    <div
      role="row"
      aria-rowindex={line + 2}
      data-row={row.id}
      className={`relative flex h-row border-b border-rule ${alone ? 'bg-selected' : 'bg-sheet'}`}
    >
      {CHART_COLUMNS.map((column, at) => (
        <ChartCellView
          key={column}
          id={`${gridId}-${row.id}-${column}`}
          row={row}
          repeat={props.repeat}
          column={column}
          index={at}
          mark={markOf(row, troubles, column)}
          people={props.people}
          look={column === cursor ? 'cursor' : at >= props.from && at <= props.to ? 'selected' : 'plain'}
        >
          {props.state === 'open' && column === cursor ? <OpenChartCell desk={desk} row={row} /> : undefined}
        </ChartCellView>
      ))}
      <div
        role="gridcell"
        aria-colindex={CHART_COLUMNS.length + 1}
        className="relative flex w-0 min-w-[15rem] grow items-center border-l-2 border-rule-strong px-3"
      >
        <ChartMargin desk={desk} row={row} troubles={troubles} state={cursor === undefined ? 'rest' : 'open'} />
      </div>
    </div>
  );
});

/** The gravest thing said of a cell; a guess is a note. */
function markOf(
  row: DraftRow,
  troubles: readonly DraftTrouble[],
  column: RowField,
): { readonly severity: Severity; readonly word: string } | undefined {
  const here = troubles.filter(({ where }) => 'field' in where && where.field === column);
  if (here.some(stopsPublishing)) return { severity: 'blocker', word: '' };
  if (here.length > 0) return { severity: 'caution', word: '' };
  return column === 'attribute' && isGuess(row.attribute)
    ? { severity: 'note', word: DRAFT_SCREEN_WORDS.guessedShort }
    : undefined;
}
