import { type RefObject, useLayoutEffect, useRef } from 'react';
import { SHEET_WORDS } from '#words/sheet.ts';

export interface SuggestionListProps {
  readonly id: string;
  /** The field it belongs to: it opens below that, or above where there is more room. */
  readonly anchor: RefObject<HTMLElement | null>;
  readonly offered: readonly string[];
  /** The one that Enter takes, from 0; -1 for none. */
  readonly chosen: number;
  readonly onTake: (text: string) => void;
}

/** Values to take instead of typing them, over everything else on the screen. */
export function SuggestionList({ id, anchor, offered, chosen, onTake }: SuggestionListProps) {
  const list = useRef<HTMLDivElement>(null);
  const shown = offered.length > 0;
  useLayoutEffect(() => {
    const box = anchor.current?.getBoundingClientRect();
    const popup = list.current;
    if (!shown || box === undefined || popup === null) return;
    popup.showPopover();
    const below = window.innerHeight - box.bottom;
    const height = popup.offsetHeight;
    popup.style.left = `${Math.max(0, Math.min(box.left, window.innerWidth - popup.offsetWidth))}px`;
    popup.style.top = `${below < height && box.top > below ? box.top - height : box.bottom}px`;
    return () => popup.hidePopover();
  }, [anchor, shown]);
  return (
    <div
      ref={list}
      id={id}
      role="listbox"
      aria-label={SHEET_WORDS.suggestions}
      popover="manual"
      className="fixed m-0 max-w-[24rem] min-w-[8rem] border border-edge bg-sheet p-0 text-ink"
    >
      {offered.map((text, n) => (
        <div
          key={text}
          id={`${id}-${n}`}
          role="option"
          aria-selected={n === chosen}
          className="min-h-row cursor-pointer truncate px-2 leading-row hover:bg-hover aria-selected:bg-selected aria-selected:font-semibold"
          // Before the field loses the focus.
          onPointerDown={(event) => {
            event.preventDefault();
            onTake(text);
          }}
        >
          {text}
        </div>
      ))}
    </div>
  );
}
