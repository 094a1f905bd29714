import { defaultRangeExtractor, type Range, useVirtualizer, type VirtualItem } from '@tanstack/react-virtual';
import { type RefObject, useCallback, useEffect } from 'react';

export interface FixedLines {
  readonly count: number;
  /** The line one is in, which is always drawn so that it can be named to a screen reader. */
  readonly at: number;
  /** Another line that is drawn wherever the window is: what has the focus must not go. */
  readonly held?: number;
  /** Of each line, in pixels. */
  readonly height: number;
  /** Height of what stays over the lines at the top of the scroller, in pixels. */
  readonly head: number;
}

/** Which of many lines of one height the window shows; it goes along when one goes to another line. */
export function useFixedLines(
  scroller: RefObject<HTMLElement | null>,
  { count, at, held = -1, height, head }: FixedLines,
): { readonly items: readonly VirtualItem[]; readonly total: number } {
  const withLine = useCallback(
    (range: Range) => {
      const shown = defaultRangeExtractor(range);
      const missing = [...new Set([at, held])].filter((n) => n >= 0 && n < range.count && !shown.includes(n));
      return missing.length === 0 ? shown : [...shown, ...missing].sort((a, b) => a - b);
    },
    [at, held],
  );
  // A new function makes the virtualizer measure anew.
  const sizeOf = useCallback(() => height, [height]);
  const keyOf = useCallback((index: number) => (sizeOf === undefined ? -1 : index), [sizeOf]);
  const virtualizer = useVirtualizer({
    count,
    getScrollElement: () => scroller.current,
    estimateSize: sizeOf,
    getItemKey: keyOf,
    rangeExtractor: withLine,
    overscan: 6,
    scrollMargin: head,
    scrollPaddingStart: head,
  });
  useEffect(() => {
    if (at >= 0) virtualizer.scrollToIndex(at, { align: 'auto' });
  }, [at, virtualizer]);
  return { items: virtualizer.getVirtualItems(), total: virtualizer.getTotalSize() - head };
}
