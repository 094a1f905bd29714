import { defaultRangeExtractor, type Range, useVirtualizer, type VirtualItem } from '@tanstack/react-virtual';
import { type RefObject, useCallback, useEffect } from 'react';
import { lineAt, lineCount, lineOf } from '../live/rows/lines.ts';
import type { Layout } from '../live/rows/row-order.ts';
import type { Sheet } from './sheet.ts';
import { useSheet } from './use-sheet.ts';

/** A heading is taller than a row by so much. */
const HEADING = 1.4;
/** Lines drawn beyond what the window shows, on either side. */
const BEYOND = 4;

/** The lines that have to be drawn, and how tall all of them are together, in pixels. */
export interface DrawnLines {
  readonly items: readonly VirtualItem[];
  readonly height: number;
}

export interface LineSizes {
  readonly row: number;
  /** Height of what lies over the lines at the top. */
  readonly head: number;
}

/**
 * Which lines the window shows. The line of the cursor is always among them, so that it can be named to a screen reader
 * wherever the window is; when the cursor goes, the window goes along.
 */
export function useLines(
  sheet: Sheet,
  layout: Layout,
  scroller: RefObject<HTMLElement | null>,
  { row, head }: LineSizes,
): DrawnLines {
  const cursor = useSheet(sheet, (state) => state.selection?.cursor.row);
  const corner = useSheet(sheet, (state) => state.selection?.corner.row);
  const cursorLine = cursor === undefined ? -1 : lineOf(sheet.ground().order, cursor);
  const sizeOf = useCallback(
    (index: number) => (lineAt(layout, index)?.kind === 'heading' ? Math.round(row * HEADING) : row),
    [layout, row],
  );
  // A new function makes the virtualizer measure anew: it does so when lines moved or their height changed.
  // The sizes are named for that reason alone.
  const keyOf = useCallback((index: number) => (sizeOf === undefined ? -1 : index), [sizeOf]);
  const rangeExtractor = useCallback((range: Range) => withLine(range, cursorLine), [cursorLine]);
  const virtualizer = useVirtualizer({
    count: lineCount(layout),
    getScrollElement: () => scroller.current,
    estimateSize: sizeOf,
    getItemKey: keyOf,
    rangeExtractor,
    overscan: BEYOND,
    scrollMargin: head,
    scrollPaddingStart: head,
  });
  useEffect(() => {
    const { order } = sheet.ground();
    const line = corner === undefined ? -1 : lineOf(order, corner);
    if (line < 0) return;
    // Going up to the first row of a group shows its heading, too.
    const above = lineAt(order.layout, line - 1)?.kind === 'heading' ? line - 1 : line;
    const [start] = virtualizer.getOffsetForIndex(above, 'start') ?? [0];
    virtualizer.scrollToIndex(start < (virtualizer.scrollOffset ?? 0) ? above : line, { align: 'auto' });
  }, [virtualizer, sheet, corner]);
  return { items: virtualizer.getVirtualItems(), height: virtualizer.getTotalSize() - head };
}

function withLine(range: Range, line: number): number[] {
  const shown = defaultRangeExtractor(range);
  if (line < 0 || line >= range.count || shown.includes(line)) return shown;
  return [...shown, line].sort((a, b) => a - b);
}
