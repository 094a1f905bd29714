import type { ReactNode } from 'react';
import type { DraftRepeat, DraftRow } from '#engine/draft/draft.ts';
import type { Severity } from '#engine/model/finding.ts';
import { MARKED } from '../../grid/cell-looks.ts';
import { PersonTag } from '../../grid/person-tag.tsx';
import { Mark } from '../../kit/mark.tsx';
import type { PersonHere } from '../../live/link.ts';
import { type ChartColumn, chartCellText } from './chart-columns.ts';
import { cellType, columnWidth } from './chart-looks.ts';

const LOOKS = {
  plain: '',
  selected: 'bg-selected',
  cursor: 'outline-2 -outline-offset-2 outline-edge group-focus-within/grid:outline-ink',
} as const;

export interface ChartCellViewProps {
  readonly id: string;
  readonly row: DraftRow;
  readonly repeat: DraftRepeat | undefined;
  readonly column: ChartColumn;
  /** Column number from 0. */
  readonly index: number;
  readonly mark: { readonly severity: Severity; readonly word: string } | undefined;
  /** The people in this row. */
  readonly people: readonly PersonHere[];
  readonly look: keyof typeof LOOKS;
  /** What stands here instead of the text while the cell is open. */
  readonly children: ReactNode;
}

/** One cell of a chart: its text, what there is to check about it, and who else is in it. */
export function ChartCellView(props: ChartCellViewProps) {
  const { id, row, column, index, mark, people, look, children } = props;
  const here = people.filter(({ where }) => where?.field === column);
  const text = chartCellText(row, column, props.repeat);
  return (
    <div
      role="gridcell"
      id={id}
      aria-colindex={index + 1}
      aria-selected={look !== 'plain'}
      data-column={column}
      className={`relative flex shrink-0 scroll-mt-row items-center px-2 ${columnWidth(column)} ${cellType(column)} ${LOOKS[look]}`}
    >
      {children ?? (
        <>
          <span className={`truncate ${mark === undefined ? '' : MARKED[mark.severity]}`}>{text}</span>
          {mark === undefined ? null : <Mark severity={mark.severity} className="ml-1 text-small" />}
          {mark === undefined || mark.word === '' ? null : <span className="sr-only">{mark.word}</span>}
        </>
      )}
      {here.map((person) => (
        <PersonTag key={person.id} person={person} inset={look === 'cursor' ? 'within' : 'edge'} />
      ))}
    </div>
  );
}
