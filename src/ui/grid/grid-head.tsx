import { type KeyboardEvent, type PointerEvent, useRef, useState } from 'react';
import { COLUMN_WORDS, SHEET_WORDS } from '#words/sheet.ts';
import type { ColumnId } from '../live/rows/column.ts';
import type { Sort } from '../live/rows/view.ts';
import { headSide } from './cell-looks.ts';
import { moveColumn, resizeColumn, widthOf } from './column-settings.ts';
import type { Sheet } from './sheet.ts';
import { useSheet } from './use-sheet.ts';

/** Pixels by which a key sizes a column. */
const KEY_STEP = 8;

/** The heads of the columns: press to sort, again to turn, a third time to sort no more. One stop of Tab; arrows go between. */
export function GridHead({ sheet, gridId }: { readonly sheet: Sheet; readonly gridId: string }) {
  const columns = useSheet(sheet, (state) => state.columns);
  const sort = useSheet(sheet, (state) => state.view.sort);
  const [at, setAt] = useState(0);
  const row = useRef<HTMLDivElement>(null);
  const stop = Math.min(at, columns.length - 1);

  const press = (event: KeyboardEvent, column: ColumnId) => {
    const step = event.key === 'ArrowRight' ? 1 : event.key === 'ArrowLeft' ? -1 : 0;
    if (step === 0 || event.altKey) return;
    event.preventDefault();
    const { settings } = sheet.state();
    if (event.shiftKey) sheet.setColumns(resizeColumn(settings, column, widthOf(settings, column) + step * KEY_STEP));
    else if (event.ctrlKey || event.metaKey) sheet.setColumns(moveColumn(settings, columns, column, step));
    const to = event.shiftKey ? stop : Math.max(0, Math.min(columns.length - 1, stop + step));
    setAt(to);
    row.current?.querySelectorAll('button')[to]?.focus();
  };

  return (
    <div role="rowgroup" className="sticky top-0 z-10 min-w-full">
      <div ref={row} role="row" aria-rowindex={1} className="flex min-w-full border-b border-rule-strong bg-sheet">
        {columns.map((column, n) => (
          <div
            key={column}
            role="columnheader"
            data-head={column}
            aria-colindex={n + 1}
            aria-sort={sort?.column === column ? sort.direction : 'none'}
            className="relative shrink-0"
            style={{ width: `var(--w-${column})` }}
          >
            <button
              id={`${gridId}-head-${column}`}
              type="button"
              tabIndex={n === stop ? 0 : -1}
              title={COLUMN_WORDS[column].name}
              className={`flex h-[2rem] w-full items-center truncate px-2 text-soft hover:text-ink touch:h-row ${headSide(column)}`}
              onFocus={() => setAt(n)}
              onClick={() => sheet.setView({ ...sheet.state().view, sort: nextSort(sort, column) })}
              onKeyDown={(event) => press(event, column)}
            >
              <span aria-hidden="true">{COLUMN_WORDS[column].head}</span>
              <span className="sr-only">{COLUMN_WORDS[column].name}</span>
              <SortSign sort={sort} column={column} />
            </button>
            <SizeHandle sheet={sheet} column={column} />
          </div>
        ))}
        <div
          role="columnheader"
          aria-colindex={columns.length + 1}
          className="sticky right-0 flex w-(--margin) shrink-0 grow items-center border-l-2 border-rule-strong bg-sheet px-3 text-soft"
        >
          <span className="@max-[70rem]/sheet:sr-only">{SHEET_WORDS.margin}</span>
        </div>
      </div>
    </div>
  );
}

function nextSort(sort: Sort | null, column: ColumnId): Sort | null {
  if (sort?.column !== column) return { column, direction: 'ascending' };
  return sort.direction === 'ascending' ? { column, direction: 'descending' } : null;
}

function SortSign({ sort, column }: { readonly sort: Sort | null; readonly column: ColumnId }) {
  if (sort?.column !== column) return null;
  return (
    <span aria-hidden="true" className="ml-1 text-ink">
      {sort.direction === 'ascending' ? '↑' : '↓'}
    </span>
  );
}

/** The right edge of a head, to drag a column wider. Keys do the same from the head itself. */
function SizeHandle({ sheet, column }: { readonly sheet: Sheet; readonly column: ColumnId }) {
  const from = useRef<{ readonly x: number; readonly width: number } | null>(null);
  const drag = (event: PointerEvent) => {
    if (from.current === null) return;
    const width = from.current.width + event.clientX - from.current.x;
    sheet.setColumns(resizeColumn(sheet.state().settings, column, width));
  };
  return (
    <div
      className="absolute top-0 right-0 h-full w-2 cursor-col-resize touch-none hover:border-r-2 hover:border-edge"
      onPointerDown={(event) => {
        event.preventDefault();
        event.currentTarget.setPointerCapture(event.pointerId);
        from.current = { x: event.clientX, width: widthOf(sheet.state().settings, column) };
      }}
      onPointerMove={drag}
      onPointerUp={() => {
        from.current = null;
      }}
    />
  );
}
