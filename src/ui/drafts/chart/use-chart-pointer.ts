import { type MouseEvent, type PointerEvent, useMemo } from 'react';
import type { Desk } from '../desk.ts';
import { closeCell, openCell } from './chart-actions.ts';
import { CHART_COLUMNS } from './chart-columns.ts';
import { type ChartCell, selectCell } from './chart-selection.ts';

/** What the pointer does in the chart: press selects, drag and Shift stretch, a second press opens. */
export function useChartPointer(desk: Desk) {
  return useMemo(() => {
    let dragging = false;
    const stretch = (corner: ChartCell) => {
      const { selection } = desk.state();
      desk.select(selection ? { ...selection, corner } : selectCell(corner));
    };
    return {
      onPointerDown(event: PointerEvent<HTMLElement>) {
        const cell = cellAt(event.target);
        if (cell === undefined || isOpen(desk, cell) || event.button !== 0) return;
        closeCell(desk, 'cell', 'stay');
        if (event.shiftKey) stretch(cell);
        else desk.select(selectCell(cell));
        dragging = event.pointerType !== 'touch';
      },
      onPointerMove(event: PointerEvent<HTMLElement>) {
        if (!dragging) return;
        if ((event.buttons & 1) === 0) {
          dragging = false;
          return;
        }
        const cell = cellAt(document.elementFromPoint(event.clientX, event.clientY));
        const corner = desk.state().selection?.corner;
        if (cell && (cell.row !== corner?.row || cell.column !== corner.column)) stretch(cell);
      },
      onClick() {
        dragging = false;
      },
      onDoubleClick(event: MouseEvent<HTMLElement>) {
        const cell = cellAt(event.target);
        if (cell && !isOpen(desk, cell)) openCell(desk);
      },
    };
  }, [desk]);
}

function cellAt(target: EventTarget | null): ChartCell | undefined {
  if (!(target instanceof Element)) return undefined;
  const cell = target.closest<HTMLElement>('[data-column]');
  const row = cell?.closest<HTMLElement>('[data-row]')?.dataset.row;
  const column = CHART_COLUMNS.find((each) => each === cell?.dataset.column);
  return row === undefined || column === undefined ? undefined : { row, column };
}

function isOpen(desk: Desk, { row, column }: ChartCell): boolean {
  const { open } = desk.state();
  return open !== undefined && open.cell.row === row && open.cell.column === column;
}
