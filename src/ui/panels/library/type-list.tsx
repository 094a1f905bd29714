import { defaultRangeExtractor, type Range, useWindowVirtualizer } from '@tanstack/react-virtual';
import { useCallback, useEffect, useLayoutEffect, useRef, useState } from 'react';
import type { TypeSummary } from '#wire/library.ts';
import { LIBRARY_WORDS } from '#words/library.ts';
import { typePath } from './library-address.ts';
import { TYPE_COLUMNS, TypeOption } from './type-option.tsx';

export interface TypeListProps {
  /** Of the list; row n has the id `id-n`. */
  readonly id: string;
  readonly crewId: string;
  readonly rows: readonly TypeSummary[];
  /** The chosen one. */
  readonly at: number;
}

const ROW_HEIGHT = 26;
/** What the field above covers when the page is scrolled under it. */
const COVERED = 56;

/** Types as rows to choose from; only those near the window are drawn, and the chosen one always. */
export function TypeList({ id, crewId, rows, at }: TypeListProps) {
  const list = useRef<HTMLDivElement>(null);
  const top = useTop(list);
  const withChosen = useCallback((range: Range) => withIndex(defaultRangeExtractor(range), at), [at]);
  const virtualizer = useWindowVirtualizer({
    count: rows.length,
    estimateSize: () => ROW_HEIGHT,
    overscan: 12,
    scrollMargin: top,
    scrollPaddingStart: COVERED,
    scrollPaddingEnd: ROW_HEIGHT,
    rangeExtractor: withChosen,
    getItemKey: (index) => rows[index]?.id ?? index,
  });
  const before = useRef(at);
  useEffect(() => {
    if (before.current !== at && at >= 0) virtualizer.scrollToIndex(at, { align: 'auto' });
    before.current = at;
  }, [at, virtualizer]);
  return (
    <>
      <div
        aria-hidden="true"
        className={`${TYPE_COLUMNS} h-row border-b border-rule-strong px-2 text-soft max-sm:hidden`}
      >
        <span>{LIBRARY_WORDS.maker}</span>
        <span>{LIBRARY_WORDS.model}</span>
        <span>{LIBRARY_WORDS.modes}</span>
        <span>{LIBRARY_WORDS.hazards}</span>
        <span className="text-right">{LIBRARY_WORDS.revision}</span>
      </div>
      <div
        ref={list}
        id={`${id}-list`}
        role="listbox"
        aria-label={LIBRARY_WORDS.list}
        className="relative"
        style={{ height: virtualizer.getTotalSize() }}
      >
        {virtualizer.getVirtualItems().map((item) => {
          const type = rows[item.index];
          return type === undefined ? null : (
            <div
              key={item.key}
              ref={virtualizer.measureElement}
              data-index={item.index}
              role="presentation"
              className="absolute inset-x-0"
              style={{ top: item.start - top }}
            >
              <TypeOption
                id={`${id}-${item.index}`}
                href={typePath(crewId, type.id)}
                type={type}
                chosen={item.index === at}
                place={item.index + 1}
                of={rows.length}
              />
            </div>
          );
        })}
      </div>
    </>
  );
}

/** Where the list begins on the page: what stands above may grow, so it is measured after each drawing. */
function useTop(list: { readonly current: HTMLElement | null }): number {
  const [top, setTop] = useState(0);
  useLayoutEffect(() => {
    const now = list.current ? list.current.getBoundingClientRect().top + window.scrollY : 0;
    if (Math.abs(now - top) > 1) setTop(now);
  });
  return top;
}

function withIndex(indexes: readonly number[], at: number): number[] {
  return at < 0 || indexes.includes(at) ? [...indexes] : [...indexes, at].sort((a, b) => a - b);
}
