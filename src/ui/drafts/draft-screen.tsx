import { useCallback, useEffect, useRef, useState, useSyncExternalStore } from 'react';
import { randomId } from '#base/random-id.ts';
import type { DraftTrouble } from '#engine/draft/draft-trouble.ts';
import { DRAFT_SCREEN_WORDS, draftNotice } from '#words/draft-screen.ts';
import { Button } from '../kit/button.tsx';
import { LinkButton } from '../kit/link-button.tsx';
import type { DraftStore } from '../live/draft-store.ts';
import { addRow, takeBack } from './chart/chart-actions.ts';
import { ChartPart } from './chart/chart-part.tsx';
import { createDesk, type Desk } from './desk.ts';
import type { Doors } from './doors.ts';
import { DraftWindows } from './draft-windows.tsx';
import { FactsForm } from './facts/facts-form.tsx';
import { KeptMode } from './modes/kept-mode.tsx';
import { ModesPart } from './modes/modes-part.tsx';
import { PastePanel } from './paste/paste-panel.tsx';
import { TroublesPart } from './troubles-part.tsx';
import { useDesk, useReading, useWritable } from './use-desk.ts';

export interface DraftScreenProps {
  readonly store: DraftStore;
  readonly doors: Doors;
}

/** An open draft below the banner: the unit, its modes, and the chart of the one before one. */
export function DraftScreen({ store, doors }: DraftScreenProps) {
  const [desk] = useState(() => createDesk(store, randomId));
  useEffect(() => desk.follow(), [desk]);
  const grid = useRef<HTMLDivElement>(null);
  const frame = useRef<HTMLDivElement>(null);
  useFirstFocus(frame, desk);
  const go = useCallback(
    (trouble: DraftTrouble) => {
      if (desk.goTo(trouble.where)) grid.current?.focus();
      else fieldOf(frame.current, trouble)?.focus();
    },
    [desk],
  );
  useStepKeys(desk);
  return (
    <div ref={frame} className="flex flex-col gap-4">
      <Tools desk={desk} />
      <FactsForm desk={desk} />
      <ModesPart desk={desk} />
      <Chart desk={desk} grid={grid} />
      <TroublesPart desk={desk} onGo={go} />
      <DraftWindows desk={desk} doors={doors} onGo={go} onChart={() => grid.current?.focus()} />
    </div>
  );
}

/** Who begins a type writes its name first; others go on in the chart. */
function useFirstFocus(frame: { readonly current: HTMLElement | null }, desk: Desk): void {
  useEffect(() => {
    if (document.activeElement !== document.body) return;
    const { facts } = desk.store.reading().draft;
    const place = facts.maker === '' ? 'input' : '[role="grid"]';
    frame.current?.querySelector<HTMLElement>(place)?.focus({ preventScroll: true });
  }, [frame, desk]);
}

/** Undo and redo wherever one is on the screen: a field one types in has its own, and the chart’s keys are its own. */
function useStepKeys(desk: Desk): void {
  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      const held = event.ctrlKey || event.metaKey;
      const own = event.target instanceof Element && event.target.matches('input, textarea, select, [role="grid"]');
      const key = event.key.toLowerCase();
      if (!held || own || (key !== 'z' && key !== 'y') || desk.state().window !== undefined) return;
      event.preventDefault();
      takeBack(desk, key === 'z' && !event.shiftKey ? 'undo' : 'redo');
    };
    document.addEventListener('keydown', press);
    return () => document.removeEventListener('keydown', press);
  }, [desk]);
}

/** The field of a form that a trouble speaks of. */
function fieldOf(frame: HTMLElement | null, { where }: DraftTrouble): HTMLElement | undefined {
  const key = where.of === 'facts' ? where.field : where.of === 'mode' ? 'mode-name' : '';
  const field = frame?.querySelector<HTMLElement>(`[data-field="${key}"]`) ?? undefined;
  const folded = field?.closest('details');
  if (folded) folded.open = true;
  return field;
}

function Tools({ desk }: { readonly desk: Desk }) {
  const { store } = desk;
  const undo = useSyncExternalStore(store.subscribeHistory, store.canUndo);
  const redo = useSyncExternalStore(store.subscribeHistory, store.canRedo);
  const writable = useWritable(store);
  const keys = (
    <LinkButton className="max-sm:hidden" onClick={() => desk.set({ window: { kind: 'keys' } })}>
      {DRAFT_SCREEN_WORDS.keys}
    </LinkButton>
  );
  return (
    <div role="toolbar" aria-label={DRAFT_SCREEN_WORDS.tools} className="flex flex-wrap items-center gap-x-4 gap-y-1">
      {writable ? (
        <>
          <Button look="main" onClick={() => desk.set({ window: { kind: 'publish' } })}>
            {DRAFT_SCREEN_WORDS.publish}
          </Button>
          <LinkButton disabled={!undo} onClick={() => takeBack(desk, 'undo')}>
            {DRAFT_SCREEN_WORDS.undo}
          </LinkButton>
          <LinkButton disabled={!redo} onClick={() => takeBack(desk, 'redo')}>
            {DRAFT_SCREEN_WORDS.redo}
          </LinkButton>
          {keys}
          <LinkButton onClick={() => desk.set({ window: { kind: 'drop' } })}>{DRAFT_SCREEN_WORDS.drop}</LinkButton>
        </>
      ) : (
        keys
      )}
      <Notice desk={desk} />
    </div>
  );
}

/** What the last step did, or why it did not. */
function Notice({ desk }: { readonly desk: Desk }) {
  const notice = useDesk(desk, (state) => state.notice);
  return (
    <p role="status" className="ml-auto max-sm:ml-0">
      {notice === undefined ? '' : draftNotice(notice)}
    </p>
  );
}

interface ChartProps {
  readonly desk: Desk;
  readonly grid: React.RefObject<HTMLDivElement | null>;
}

/** The chart of the mode before one; while it has no rows, the place to paste one. */
function Chart({ desk, grid }: ChartProps) {
  const { draft } = useReading(desk.store);
  const chosen = useDesk(desk, (state) => state.mode);
  const writable = useWritable(desk.store);
  const mode = draft.modes.find((each) => each.id === chosen);
  if (mode !== undefined && mode.kept !== '') return <KeptMode desk={desk} mode={mode} />;
  if (mode !== undefined && mode.rows.length > 0) return <ChartPart desk={desk} mode={mode} grid={grid} />;
  if (!writable) return mode === undefined ? null : <p className="text-soft">{DRAFT_SCREEN_WORDS.noRows}</p>;
  return <EmptyChart desk={desk} grid={grid} />;
}

function EmptyChart({ desk, grid }: ChartProps) {
  const mode = desk.mode();
  const toChart = () => requestAnimationFrame(() => grid.current?.focus());
  return (
    <section aria-label={DRAFT_SCREEN_WORDS.grid} className="flex flex-col gap-3">
      {mode === undefined ? null : (
        <p className="flex flex-wrap gap-x-4 text-soft">
          {DRAFT_SCREEN_WORDS.noRows}
          <LinkButton
            onClick={() => {
              addRow(desk);
              toChart();
            }}
          >
            {DRAFT_SCREEN_WORDS.addRow}
          </LinkButton>
        </p>
      )}
      <PastePanel desk={desk} text="" onTaken={toChart} />
    </section>
  );
}
