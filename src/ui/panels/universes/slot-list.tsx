import { type KeyboardEvent, useId, useRef } from 'react';
import type { Universe } from '#engine/model/address.ts';
import { SLOT_CARD_WORDS, UNIVERSE_PAGE_WORDS as words } from '#words/slots.ts';
import { CHART_WORDS } from '#words/type-chart.ts';
import { useHeight } from '../../grid/use-height.ts';
import { lineOfKey } from './line-of-key.ts';
import { SLOT_COLUMNS, SlotLineRow } from './slot-line-row.tsx';
import type { SlotLine } from './slot-lines.ts';
import { useFixedLines } from './use-fixed-lines.ts';

export interface SlotListProps {
  readonly universe: Universe;
  readonly lines: readonly SlotLine[];
  readonly at: number;
  readonly onGo: (line: number) => void;
  /** Opens the unit of a line beside the list. */
  readonly onOpen: (line: number) => void;
  readonly onEscape: () => void;
}

const ROW = 28;
const HEAD = 29;

/** Every slot of a universe as lines; one stop of Tab, arrows go from line to line, Enter opens the unit. */
export function SlotList({ universe, lines, at, onGo, onOpen, onEscape }: SlotListProps) {
  const gridId = useId();
  const scroller = useRef<HTMLDivElement>(null);
  const probe = useRef<HTMLDivElement>(null);
  const top = useRef<HTMLDivElement>(null);
  const height = useHeight(probe, ROW);
  const head = useHeight(top, HEAD);
  const { items, total } = useFixedLines(scroller, { count: lines.length, at, height, head });
  const press = (event: KeyboardEvent) => {
    const page = Math.floor(((scroller.current?.clientHeight ?? 0) - head) / height);
    const line = lineOfKey(event.key, { at, count: lines.length, page });
    if (line !== undefined) onGo(line);
    else if (event.key === 'Enter' || event.key === ' ') onOpen(at);
    else if (event.key === 'Escape') onEscape();
    else return;
    event.preventDefault();
  };
  return (
    <div
      ref={scroller}
      role="grid"
      tabIndex={0}
      aria-label={words.slots(universe)}
      aria-describedby={`${gridId}-hint`}
      aria-rowcount={lines.length + 1}
      aria-readonly="true"
      aria-activedescendant={`${gridId}-${at}`}
      className="relative min-h-0 flex-1 overflow-y-auto border-t border-ink bg-sheet focus-visible:-outline-offset-2"
      onKeyDown={press}
    >
      <div
        ref={top}
        role="row"
        aria-rowindex={1}
        className={`${SLOT_COLUMNS} sticky top-0 z-1 border-b border-rule-strong bg-sheet px-4 py-1 text-soft sm:px-5 max-sm:sr-only`}
      >
        <Head text={words.slot} className="sm:text-right" />
        <Head text={words.unit} />
        <Head text={words.channel} className="text-right" />
        <Head text={SLOT_CARD_WORDS.does} />
        <Head text={CHART_WORDS.byte} />
        <Head text={CHART_WORDS.cell} />
        <Head text={words.state} />
      </div>
      <div ref={probe} className="absolute h-[1.75rem] w-0 max-sm:h-[3.5rem]" />
      <div role="rowgroup" className="relative" style={{ height: total }}>
        {items.map(({ index, start, size }) => {
          const line = lines[index];
          if (line === undefined) return null;
          return (
            <SlotLineRow
              key={index}
              id={`${gridId}-${index}`}
              line={line}
              index={index}
              top={start - head}
              height={size}
              look={index === at ? 'here' : 'plain'}
              onOpen={onOpen}
            />
          );
        })}
      </div>
      <span id={`${gridId}-hint`} hidden>
        {words.hint}
      </span>
    </div>
  );
}

const Head = ({ text, className = '' }: { readonly text: string; readonly className?: string }) => (
  <span role="columnheader" className={`truncate ${className}`}>
    {text}
  </span>
);
