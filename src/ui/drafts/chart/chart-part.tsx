import { type RefObject, useCallback, useRef } from 'react';
import type { DraftMode } from '#engine/draft/draft.ts';
import { footprintsOfMode } from '#engine/type/slots-of.ts';
import { DRAFT_SCREEN_WORDS, KEY_LINE } from '#words/draft-screen.ts';
import { footprintWords } from '#words/fixture-types.ts';
import { counted } from '#words/screens.ts';
import { LinkButton } from '../../kit/link-button.tsx';
import { PHONE, useMedia } from '../../workspace/use-media.ts';
import type { Desk } from '../desk.ts';
import { PhoneRows } from '../phone/phone-rows.tsx';
import { SlotStrip } from '../slots/slot-strip.tsx';
import { useDesk, useReading, useWritable } from '../use-desk.ts';
import { addRow, confirmGuesses, guessesIn, removeSelected } from './chart-actions.ts';
import { ChartGrid } from './chart-grid.tsx';
import { selectCell } from './chart-selection.ts';

export interface ChartPartProps {
  readonly desk: Desk;
  readonly mode: DraftMode;
  readonly grid: RefObject<HTMLDivElement | null>;
}

/** The chart of a mode: what can be done with its rows, the rows, the keys, and every slot at once. */
export function ChartPart({ desk, mode, grid }: ChartPartProps) {
  const { troubles } = useReading(desk.store);
  const row = useDesk(desk, (state) => state.selection?.cursor.row);
  const phone = useMedia(PHONE);
  const strip = useRef<HTMLElement>(null);
  const toSlots = useCallback(() => {
    const here = strip.current?.querySelector<HTMLElement>('[data-here]');
    const place = here ?? strip.current?.querySelector<HTMLElement>('button[tabindex="0"]');
    place?.focus({ preventScroll: true });
  }, []);
  const toGrid = useCallback(() => grid.current?.focus({ preventScroll: true }), [grid]);
  const own = troubles.filter(({ where }) => 'mode' in where && where.mode === mode.id);
  const go = (id: string) => {
    desk.select(selectCell({ row: id, column: desk.state().selection?.cursor.column ?? 'slots' }));
    toGrid();
  };
  return (
    <section aria-label={DRAFT_SCREEN_WORDS.grid} className="flex flex-col sm:max-h-dvh">
      <ChartLine desk={desk} mode={mode} />
      {phone ? (
        <PhoneRows desk={desk} mode={mode} troubles={own} />
      ) : (
        <>
          <ChartGrid desk={desk} mode={mode} troubles={own} grid={grid} onSlots={toSlots} />
          <KeyLine />
        </>
      )}
      <SlotStrip mode={mode} row={row} frame={strip} onGo={go} onLeave={toGrid} />
    </section>
  );
}

/** How much it is, and words for what is done with rows. */
function ChartLine({ desk, mode }: Omit<ChartPartProps, 'grid'>) {
  const phone = useMedia(PHONE);
  const { draft, type } = useReading(desk.store);
  const writable = useWritable(desk.store);
  const some = useDesk(desk, (state) => state.selection !== undefined);
  const own = type.modes[draft.modes.indexOf(mode)];
  const guesses = guessesIn(mode).length;
  const footprint = own === undefined ? '' : footprintWords(footprintsOfMode(type, own));
  return (
    <div className="flex flex-wrap items-baseline gap-x-5 gap-y-1 pb-1">
      <p role="status">
        <b>{footprint}</b> · {counted(mode.rows.length, 'row')}
        {guesses === 0 ? null : ` · ${DRAFT_SCREEN_WORDS.toConfirm(guesses)}`}
      </p>
      {writable ? (
        <div className="ml-auto flex flex-wrap gap-x-4 max-sm:ml-0">
          {guesses === 0 || phone ? null : (
            <LinkButton onClick={() => confirmGuesses(desk)}>{DRAFT_SCREEN_WORDS.confirm}</LinkButton>
          )}
          <LinkButton onClick={() => addRow(desk)}>{DRAFT_SCREEN_WORDS.addRow}</LinkButton>
          <LinkButton onClick={() => desk.set({ window: { kind: 'paste', text: '' } })}>
            {DRAFT_SCREEN_WORDS.paste}
          </LinkButton>
          <LinkButton disabled={!some} onClick={() => desk.set({ window: { kind: 'repeat' } })}>
            {DRAFT_SCREEN_WORDS.repeat}
          </LinkButton>
          <LinkButton disabled={!some} onClick={() => desk.set({ window: { kind: 'renumber' } })}>
            {DRAFT_SCREEN_WORDS.renumber}
          </LinkButton>
          <LinkButton disabled={!some} onClick={() => removeSelected(desk)}>
            {DRAFT_SCREEN_WORDS.removeRows}
          </LinkButton>
        </div>
      ) : null}
    </div>
  );
}

/** The keys one needs with a manual on the knee. */
function KeyLine() {
  return (
    <p className="flex flex-wrap justify-end gap-x-4 py-1 text-small text-soft">
      {KEY_LINE.map(([keys, does]) => (
        <span key={keys}>
          <kbd>{keys}</kbd> {does}
        </span>
      ))}
    </p>
  );
}
