import { type ComponentType, memo } from 'react';
import type { FixtureId } from '#engine/model/ids.ts';
import type { RowView } from '../live/row-views.ts';
import type { ColumnId } from '../live/rows/column.ts';
import { CellEditor } from './cell-editor.tsx';
import { fieldMarks } from './field-marks.ts';
import { GridCell } from './grid-cell.tsx';
import type { Sheet } from './sheet.ts';
import { useRow } from './use-sheet.ts';

/** What stands in the margin beside a row. */
export type Margin = ComponentType<MarginProps>;

export interface MarginProps {
  readonly sheet: Sheet;
  readonly row: RowView;
  /** `open` beside the cursor: all there is to say, over the rows below. */
  readonly state: 'rest' | 'open';
}

export interface GridRowProps {
  readonly sheet: Sheet;
  readonly id: FixtureId;
  /** Prefix of the ids of cells. */
  readonly gridId: string;
  /** Line from 0. */
  readonly line: number;
  /** Pixels from the first line. */
  readonly top: number;
  readonly columns: readonly ColumnId[];
  /** First and last selected column, from 0; -1 when no cell of this row is. */
  readonly from: number;
  readonly to: number;
  /** The column the cursor is in; undefined when it is in another row. */
  readonly cursor: ColumnId | undefined;
  readonly state: 'shown' | 'editing';
  readonly margin: Margin;
}

/** One row of the sheet with its margin. It follows its own fixture and findings, and nobody else’s. */
export const GridRow = memo(function GridRow(props: GridRowProps) {
  const { sheet, id, gridId, line, columns, cursor, margin: MarginCell } = props;
  const row = useRow(sheet.store, id);
  if (row === undefined) return null;
  const marks = fieldMarks(row);
  const alone = cursor !== undefined && props.from === props.to;
  return (
    <div
      role="row"
      aria-rowindex={line + 2}
      data-row={id}
      className={`group absolute left-0 flex h-row min-w-full border-b border-rule ${alone ? 'bg-selected' : 'bg-sheet'} ${cursor === undefined ? '' : 'z-[2]'}`}
      style={{ top: props.top }}
    >
      {columns.map((column, n) => {
        const editing = props.state === 'editing' && column === cursor;
        return (
          <GridCell
            key={column}
            id={`${gridId}-${id}-${column}`}
            row={row}
            column={column}
            index={n}
            rig={sheet.store.rig()}
            mark={marks[column]}
            look={column === cursor ? 'cursor' : n >= props.from && n <= props.to ? 'selected' : 'plain'}
          >
            {editing ? <CellEditor sheet={sheet} row={row} /> : undefined}
          </GridCell>
        );
      })}
      <div
        role="gridcell"
        aria-colindex={columns.length + 1}
        className="sticky right-0 flex w-(--margin) shrink-0 grow items-center border-l-2 border-rule-strong bg-sheet px-3"
      >
        <MarginCell sheet={sheet} row={row} state={cursor === undefined ? 'rest' : 'open'} />
      </div>
    </div>
  );
});
