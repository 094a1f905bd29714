import type { ReactNode } from 'react';
import type { Severity } from '#engine/model/finding.ts';
import { isLocked } from '#engine/model/locked.ts';
import type { Rig } from '#engine/model/rig.ts';
import { Mark } from '../kit/mark.tsx';
import type { RowView } from '../live/row-views.ts';
import { cellText } from '../live/rows/cell-text.ts';
import type { ColumnId } from '../live/rows/column.ts';
import { LockMark } from '../locks/lock-mark.tsx';
import { cellClasses, MARKED } from './cell-looks.ts';
import { PersonTag } from './person-tag.tsx';

export interface GridCellProps {
  readonly id: string;
  readonly row: RowView;
  readonly column: ColumnId;
  /** Column number from 0. */
  readonly index: number;
  readonly rig: Rig;
  readonly mark: Severity | undefined;
  readonly look: 'plain' | 'selected' | 'cursor';
  /** What stands here instead of the text while the cell is open. */
  readonly children: ReactNode;
}

/** One cell: its text, what a finding says of it, and who else is in it. */
export function GridCell({ id, row, column, index, rig, mark, look, children }: GridCellProps) {
  const here = row.people.filter(({ where }) => where?.field === column);
  return (
    <div
      role="gridcell"
      id={id}
      aria-colindex={index + 1}
      aria-selected={look !== 'plain'}
      aria-readonly={column === 'footprint' ? true : undefined}
      data-column={column}
      className={cellClasses(column, look)}
      style={{ width: `var(--w-${column})` }}
    >
      {column === 'address' && children === undefined && isLocked(row.fixture) ? (
        <LockMark reason={row.fixture.lock} className="mr-1 text-soft" />
      ) : null}
      {children ?? <CellText text={cellText(rig, row.fixture, column)} mark={mark} />}
      {here.map((person) => (
        <PersonTag key={person.id} person={person} inset={look === 'cursor' ? 'within' : 'edge'} />
      ))}
    </div>
  );
}

function CellText({ text, mark }: { readonly text: string; readonly mark: Severity | undefined }) {
  if (mark === undefined) return <span className="truncate">{text}</span>;
  return (
    <>
      <span className={`truncate ${MARKED[mark]}`}>{text}</span>
      <Mark severity={mark} className="ml-1 text-small" />
    </>
  );
}
