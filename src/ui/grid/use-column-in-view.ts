import { type RefObject, useEffect } from 'react';
import type { ColumnId } from '../live/rows/column.ts';

/** Scrolls sideways so that the column one goes to is seen, and not under the margin. */
export function useColumnInView(scroller: RefObject<HTMLElement | null>, column: ColumnId | undefined): void {
  useEffect(() => {
    const box = scroller.current;
    const heads = [...(box?.querySelectorAll<HTMLElement>('[role="columnheader"]') ?? [])];
    const head = heads.find((each) => each.dataset.head === column);
    const margin = heads.at(-1);
    if (box === null || head === undefined || margin === undefined) return;
    const room = box.clientWidth - margin.offsetWidth;
    const over = head.offsetLeft + head.offsetWidth - room;
    if (head.offsetLeft < box.scrollLeft) box.scrollLeft = head.offsetLeft;
    else if (over > box.scrollLeft) box.scrollLeft = over;
  }, [scroller, column]);
}
