import { type MouseEvent, type PointerEvent, useMemo } from 'react';
import type { FixtureId } from '#engine/model/ids.ts';
import { COLUMNS } from './column-settings.ts';
import { type CellRef, selectCell, stretchTo } from './selection.ts';
import type { Sheet } from './sheet.ts';
import { closeCell, openCell } from './sheet-actions.ts';

/** Pixels from the edge of the sheet within which a drag scrolls it. */
const EDGE = 24;

/** What the pointer does in the sheet: press selects, drag and Shift stretch, a second press opens. */
export function useGridPointer(sheet: Sheet) {
  return useMemo(() => {
    let dragging = false;
    const onPointerDown = (event: PointerEvent<HTMLElement>) => {
      const cell = cellAt(event.target);
      if (cell === undefined || isOpen(sheet, cell) || event.button !== 0) return;
      closeCell(sheet, 'cell', 'stay');
      // A finger that goes on scrolls the sheet: it selects when it is lifted.
      if (event.pointerType === 'touch') return;
      const { selection } = sheet.state();
      sheet.select(event.shiftKey && selection ? stretchTo(selection, cell) : selectCell(cell));
      dragging = true;
    };
    const onPointerMove = (event: PointerEvent<HTMLElement>) => {
      if (!dragging) return;
      if ((event.buttons & 1) === 0) {
        dragging = false;
        return;
      }
      scrollAtEdge(event);
      const cell = cellAt(document.elementFromPoint(event.clientX, event.clientY));
      const { selection } = sheet.state();
      if (cell && selection && !sameCell(cell, selection.corner)) sheet.select(stretchTo(selection, cell));
    };
    const onClick = (event: MouseEvent<HTMLElement>) => {
      dragging = false;
      const touch = event.nativeEvent instanceof globalThis.PointerEvent && event.nativeEvent.pointerType === 'touch';
      const cell = cellAt(event.target);
      if (!touch || cell === undefined || isOpen(sheet, cell)) return;
      const was = sheet.state().selection?.cursor;
      sheet.select(selectCell(cell));
      if (was && sameCell(was, cell)) openCell(sheet);
    };
    const onDoubleClick = (event: MouseEvent<HTMLElement>) => {
      const cell = cellAt(event.target);
      if (cell && !isOpen(sheet, cell)) openCell(sheet);
    };
    return { onPointerDown, onPointerMove, onClick, onDoubleClick };
  }, [sheet]);
}

function cellAt(target: EventTarget | null): CellRef | undefined {
  if (!(target instanceof Element)) return undefined;
  const cell = target.closest<HTMLElement>('[data-column]');
  const row = cell?.closest<HTMLElement>('[data-row]')?.dataset.row;
  const column = COLUMNS.find((each) => each === cell?.dataset.column);
  return row === undefined || column === undefined ? undefined : { row: row as FixtureId, column };
}

function scrollAtEdge({ currentTarget, clientY }: PointerEvent<HTMLElement>): void {
  const box = currentTarget.getBoundingClientRect();
  if (clientY > box.bottom - EDGE) currentTarget.scrollTop += EDGE;
  else if (clientY < box.top + 2 * EDGE) currentTarget.scrollTop -= EDGE;
}

const sameCell = (a: CellRef, b: CellRef) => a.row === b.row && a.column === b.column;

function isOpen(sheet: Sheet, cell: CellRef): boolean {
  const { editing } = sheet.state();
  return editing !== undefined && sameCell(editing.cell, cell);
}
