import type { ReactNode } from 'react';
import type { Severity } from '#engine/model/finding.ts';
import type { Rig } from '#engine/model/rig.ts';
import { SHEET_WORDS } from '#words/sheet.ts';
import { Mark } from '../kit/mark.tsx';
import type { PersonHere } from '../live/link.ts';
import type { RowView } from '../live/row-views.ts';
import { cellText } from '../live/rows/cell-text.ts';
import type { ColumnId } from '../live/rows/column.ts';
import { cellClasses, MARKED } from './cell-looks.ts';
import { personLook } from './person-looks.ts';

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

interface PersonTagProps {
  readonly person: PersonHere;
  /** `within` leaves room for my own mark, where both of us are in one cell. */
  readonly inset: 'edge' | 'within';
}

function PersonTag({ person, inset }: PersonTagProps) {
  const { outline, ground } = personLook(person.colour);
  return (
    <span
      className={`pointer-events-none absolute inset-0 z-[1] font-sans font-normal outline-2 ${outline} ${
        inset === 'edge' ? '-outline-offset-2' : '-outline-offset-4'
      }`}
    >
      <span className={`absolute right-0 bottom-full px-1 text-small leading-4 text-person-ink ${ground}`}>
        <span aria-hidden="true">{person.name}</span>
        <span className="sr-only">{SHEET_WORDS.here(person.name)}</span>
      </span>
    </span>
  );
}
