import { type KeyboardEvent, type RefObject, useEffect, useMemo, useRef, useState } from 'react';
import type { DraftMode } from '#engine/draft/draft.ts';
import { withoutGuess } from '#engine/draft/guess.ts';
import { rowWord, SLOT_WORDS } from '#words/draft-screen.ts';
import { Mark } from '../../kit/mark.tsx';
import { type DraftBreak, type DraftSlot, type SlotUse, slotsOfDraft } from './draft-slots.ts';

export interface SlotStripProps {
  readonly mode: DraftMode;
  /** The row of the cursor: its slots are marked. */
  readonly row: string | undefined;
  readonly frame: RefObject<HTMLElement | null>;
  readonly onGo: (row: string) => void;
  /** Gives the focus back to the chart. */
  readonly onLeave: () => void;
}

/** Every slot of a mode at once, break by break: what it does, where nothing is, and where two things are. */
export function SlotStrip({ mode, row, frame, onGo, onLeave }: SlotStripProps) {
  const breaks = useMemo(() => slotsOfDraft(mode), [mode]);
  useHereInView(frame, row);
  const press = (event: KeyboardEvent) => {
    if (event.key !== 'Escape' && event.key !== 'F6') return;
    event.preventDefault();
    onLeave();
  };
  return (
    <section
      ref={frame}
      aria-label={SLOT_WORDS.title}
      className="max-h-[34dvh] shrink-0 overflow-y-auto border-t border-ink pt-1 pb-2 max-sm:max-h-none"
      onKeyDown={press}
    >
      {breaks.length === 0 ? <p className="text-soft">{SLOT_WORDS.none}</p> : null}
      {breaks.map((each) => (
        <Break key={each.break} of={each} row={row} several={breaks.length > 1} onGo={onGo} />
      ))}
    </section>
  );
}

/** Keeps the slots of the row one is in where one sees them, without moving the page. */
function useHereInView(frame: RefObject<HTMLElement | null>, row: string | undefined): void {
  useEffect(() => {
    const strip = frame.current;
    const here = row === undefined ? null : strip?.querySelector('[data-here]');
    if (!strip || !here) return;
    const [outer, inner] = [strip.getBoundingClientRect(), here.getBoundingClientRect()];
    if (inner.top < outer.top) strip.scrollTop += inner.top - outer.top;
    else if (inner.bottom > outer.bottom) strip.scrollTop += inner.bottom - outer.bottom;
  }, [frame, row]);
}

interface BreakProps {
  readonly of: DraftBreak;
  readonly row: string | undefined;
  readonly several: boolean;
  readonly onGo: (row: string) => void;
}

/** One stop of Tab; arrows go from slot to slot, Enter goes to the row of one. */
function Break({ of, row, several, onGo }: BreakProps) {
  const { slots } = of;
  const [at, setAt] = useState(0);
  const list = useRef<HTMLOListElement>(null);
  const stop = Math.min(at, slots.length - 1);
  const press = (event: KeyboardEvent) => {
    const step = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[event.key];
    if (step === undefined) return;
    event.preventDefault();
    const to = Math.max(0, Math.min(slots.length - 1, stop + step));
    setAt(to);
    list.current?.querySelectorAll('button')[to]?.focus();
  };
  return (
    <div>
      <h3 className="text-small text-soft">
        {several ? SLOT_WORDS.break(of.break, slots.length) : SLOT_WORDS.one(slots.length)}
      </h3>
      <ol
        ref={list}
        aria-label={SLOT_WORDS.strip(of.break)}
        className="grid grid-cols-[repeat(auto-fill,minmax(6.5rem,1fr))] border-t border-l border-rule-strong"
        onKeyDown={press}
      >
        {slots.map((slot, n) => (
          <li key={slot.slot} className="border-r border-b border-rule-strong">
            <Slot
              slot={slot}
              tabIndex={n === stop ? 0 : -1}
              look={slot.uses.some((use) => use.row.id === row) ? 'here' : 'else'}
              onFocus={() => setAt(n)}
              onGo={() => onGo(slot.uses[0]?.row.id ?? '')}
            />
          </li>
        ))}
      </ol>
    </div>
  );
}

const HATCHED = 'bg-[repeating-linear-gradient(135deg,var(--color-rule)_0_1px,transparent_1px_7px)]';

interface SlotProps {
  readonly slot: DraftSlot;
  readonly tabIndex: number;
  /** `here`: of the row one is in. */
  readonly look: 'here' | 'else';
  readonly onFocus: () => void;
  readonly onGo: () => void;
}

function Slot({ slot, tabIndex, look, onFocus, onGo }: SlotProps) {
  const hole = slot.uses.length === 0;
  const twice = slot.uses.length > 1;
  const ground = look === 'here' ? 'bg-selected' : hole ? HATCHED : 'bg-sheet';
  return (
    <button
      type="button"
      tabIndex={tabIndex}
      aria-disabled={hole}
      data-here={look === 'here' ? '' : undefined}
      className={`flex h-full min-h-control w-full flex-col items-start px-1.5 py-0.5 text-left leading-tight ${ground} ${
        look === 'here' ? 'shadow-[inset_0_-3px_0_var(--color-ink)]' : ''
      }`}
      onFocus={onFocus}
      onClick={() => {
        if (!hole) onGo();
      }}
    >
      <span className="font-mono text-small text-soft tabular-nums">
        <span className="sr-only">{SLOT_WORDS.slot(slot.slot)}</span>
        <span aria-hidden="true">{slot.slot}</span>
      </span>
      {hole ? <span className="text-small text-soft">{SLOT_WORDS.hole}</span> : null}
      {twice ? (
        <span className="text-small text-blocker">
          <Mark severity="blocker" /> {SLOT_WORDS.twice}
        </span>
      ) : null}
      {slot.uses.slice(0, 2).map((use) => (
        <span key={`${use.row.id} ${use.cell}`} className="w-full text-small [overflow-wrap:anywhere]">
          {slotWords(use)}
        </span>
      ))}
    </button>
  );
}

function slotWords({ row, byte, of, cell }: SlotUse): string {
  const word = rowWord({ attribute: withoutGuess(row.attribute), name: row.name });
  const bytes = of === 1 ? '' : (SLOT_WORDS.bytes[byte] ?? '');
  return [word, bytes, cell === 0 ? '' : SLOT_WORDS.cell(cell)].filter((text) => text !== '').join(' ');
}
