import { useWindowVirtualizer } from '@tanstack/react-virtual';
import { useLayoutEffect, useRef, useState } from 'react';
import type { ListLine } from '#engine/list/read-list.ts';
import { FIXTURE_HEADINGS, LISTS_IN_WORDS } from '#words/lists-in.ts';
import { FIXTURE_COLUMNS, LineCells } from './line-cells.tsx';

export interface LinesTableProps {
  readonly lines: readonly ListLine[];
  readonly leftOut: ReadonlySet<number>;
  /** Both the same functions each time, so that lines already drawn stay as they are. */
  readonly onLeaveOut: (line: number) => void;
  readonly onTake: (line: number) => void;
}

const ROW_HEIGHT = 25;

/** Every line and what it becomes; only those near the window are drawn, so that long lists scroll freely. */
export function LinesTable({ lines, leftOut, onLeaveOut, onTake }: LinesTableProps) {
  const body = useRef<HTMLTableSectionElement>(null);
  const [top, setTop] = useState(0);
  useLayoutEffect(() => {
    // What stands above may have grown: measured after each drawing, and set only when it moved.
    const now = body.current ? body.current.getBoundingClientRect().top + window.scrollY : 0;
    if (Math.abs(now - top) > 1) setTop(now);
  });
  const virtualizer = useWindowVirtualizer({
    count: lines.length,
    estimateSize: () => ROW_HEIGHT,
    overscan: 20,
    scrollMargin: top,
    getItemKey: (index) => lines[index]?.line ?? index,
  });
  const items = virtualizer.getVirtualItems();
  const before = (items[0]?.start ?? top) - top;
  const after = virtualizer.getTotalSize() - ((items.at(-1)?.end ?? top) - top);
  return (
    <table className="w-full table-fixed border-collapse text-left" aria-rowcount={lines.length + 1}>
      <caption className="sr-only">{LISTS_IN_WORDS.linesAbout}</caption>
      <LinesHead />
      <tbody ref={body}>
        <Gap height={before} />
        {items.map((item) => {
          const line = lines[item.index];
          if (line === undefined) return null;
          return (
            <tr
              key={item.key}
              ref={virtualizer.measureElement}
              data-index={item.index}
              aria-rowindex={item.index + 2}
              className="border-b border-rule"
            >
              <LineCells line={line} leftOut={leftOut.has(line.line)} onLeaveOut={onLeaveOut} onTake={onTake} />
            </tr>
          );
        })}
        <Gap height={after} />
      </tbody>
    </table>
  );
}

/** The room of lines that are not drawn. */
function Gap({ height }: { readonly height: number }) {
  if (height <= 0) return null;
  return (
    <tr>
      <td colSpan={3} style={{ height }} />
    </tr>
  );
}

function LinesHead() {
  return (
    <thead className="border-b border-rule-strong text-soft">
      <tr aria-rowindex={1}>
        <th scope="col" className="h-row w-8 touch:w-11">
          <span className="sr-only">{LISTS_IN_WORDS.take}</span>
        </th>
        <th scope="col" className="w-12 pr-2 text-right font-normal">
          {LISTS_IN_WORDS.line}
        </th>
        <th scope="col" className="font-normal">
          <span className="md:sr-only">{LISTS_IN_WORDS.becomes}</span>
          <span className={`${FIXTURE_COLUMNS} max-md:hidden`}>
            {Object.entries(FIXTURE_HEADINGS).map(([key, heading]) => (
              <span key={key} className={key === 'channel' || key === 'unit' ? 'text-right' : undefined}>
                {heading}
              </span>
            ))}
          </span>
        </th>
      </tr>
    </thead>
  );
}
