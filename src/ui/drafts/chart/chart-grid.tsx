import { type RefObject, useEffect, useId, useMemo, useRef, useSyncExternalStore } from 'react';
import type { DraftMode } from '#engine/draft/draft.ts';
import type { DraftTrouble } from '#engine/draft/draft-trouble.ts';
import { DRAFT_SCREEN_WORDS } from '#words/draft-screen.ts';
import { ROW_NAMES } from '#words/drafts.ts';
import type { PersonHere } from '../../live/link.ts';
import type { Desk } from '../desk.ts';
import { useDesk, useWritable } from '../use-desk.ts';
import { CHART_COLUMNS, repeatOf } from './chart-columns.ts';
import { columnWidth } from './chart-looks.ts';
import { ChartRow } from './chart-row.tsx';
import { spanOf } from './chart-selection.ts';
import { useChartClipboard } from './use-chart-clipboard.ts';
import { useChartKeys } from './use-chart-keys.ts';
import { useChartPointer } from './use-chart-pointer.ts';

export interface ChartGridProps {
  readonly desk: Desk;
  readonly mode: DraftMode;
  readonly troubles: readonly DraftTrouble[];
  readonly grid: RefObject<HTMLDivElement | null>;
  readonly onSlots: () => void;
}

const NOBODY: readonly PersonHere[] = Object.freeze([]);
const NO_TROUBLE: readonly DraftTrouble[] = Object.freeze([]);

/** The chart of a mode as a WAI-ARIA grid: it has the focus itself, so that rows may come and go while one types. */
export function ChartGrid({ desk, mode, troubles, grid, onSlots }: ChartGridProps) {
  const gridId = useId();
  const writable = useWritable(desk.store);
  const selection = useDesk(desk, (state) => state.selection);
  const open = useDesk(desk, (state) => state.open?.cell);
  const people = usePeople(desk);
  const byRow = useMemo(() => troublesByRow(troubles), [troubles]);
  const onKeyDown = useChartKeys(desk, onSlots);
  const clipboard = useChartClipboard(desk);
  const pointer = useChartPointer(desk);
  useFocusBack(grid, open !== undefined);
  const cursor = selection?.cursor;
  const span = spanOf(
    mode.rows.map((row) => row.id),
    selection,
  );
  const active = cursor === undefined ? undefined : `${gridId}-${cursor.row}-${cursor.column}`;
  useInView(selection && `${gridId}-${selection.corner.row}-${selection.corner.column}`);
  return (
    <div
      ref={grid}
      role="grid"
      tabIndex={0}
      aria-label={DRAFT_SCREEN_WORDS.grid}
      aria-rowcount={mode.rows.length + 1}
      aria-colcount={CHART_COLUMNS.length + 1}
      aria-multiselectable="true"
      aria-readonly={!writable}
      aria-activedescendant={active}
      className="group/grid min-h-[9rem] overflow-auto border-b border-rule-strong bg-sheet outline-none select-none"
      onKeyDown={onKeyDown}
      onFocus={({ currentTarget, target }) => {
        if (target !== currentTarget) return;
        currentTarget.parentElement?.scrollIntoView({ block: 'nearest' });
        // Whoever comes back from a field is in the chart again for the others, too.
        desk.select(desk.state().selection);
      }}
      {...clipboard}
      {...pointer}
    >
      <div role="rowgroup" className="sticky top-0 z-10 w-max min-w-full">
        <div role="row" aria-rowindex={1} className="flex border-b border-rule-strong bg-sheet text-soft">
          {CHART_COLUMNS.map((column, at) => (
            <div
              key={column}
              role="columnheader"
              aria-colindex={at + 1}
              className={`flex h-row shrink-0 items-center px-2 ${columnWidth(column)}`}
            >
              {ROW_NAMES[column]}
            </div>
          ))}
          <div
            role="columnheader"
            aria-colindex={CHART_COLUMNS.length + 1}
            className="flex min-w-[15rem] grow items-center border-l-2 border-rule-strong px-3"
          >
            {DRAFT_SCREEN_WORDS.margin}
          </div>
        </div>
      </div>
      <div role="rowgroup" className="w-max min-w-full">
        {mode.rows.map((row, line) => (
          <ChartRow
            key={row.id}
            desk={desk}
            row={row}
            repeat={repeatOf(mode, row)}
            line={line}
            gridId={gridId}
            troubles={byRow.get(row.id) ?? NO_TROUBLE}
            people={people.get(row.id) ?? NOBODY}
            from={span !== undefined && line >= span.top && line <= span.bottom ? span.left : -1}
            to={span !== undefined && line >= span.top && line <= span.bottom ? span.right : -1}
            cursor={cursor?.row === row.id ? cursor.column : undefined}
            state={open?.row === row.id ? 'open' : 'shown'}
          />
        ))}
      </div>
    </div>
  );
}

/** The troubles of each row; those of a repeat stand in its first row. */
function troublesByRow(troubles: readonly DraftTrouble[]): ReadonlyMap<string, readonly DraftTrouble[]> {
  const rows = new Map<string, DraftTrouble[]>();
  for (const trouble of troubles) {
    if (trouble.where.of !== 'row') continue;
    const known = rows.get(trouble.where.row);
    if (known === undefined) rows.set(trouble.where.row, [trouble]);
    else known.push(trouble);
  }
  return rows;
}

function usePeople({ store }: Desk): ReadonlyMap<string, readonly PersonHere[]> {
  const people = useSyncExternalStore(store.subscribeLink, store.people);
  return useMemo(() => {
    const rows = new Map<string, PersonHere[]>();
    for (const person of people) {
      const row = person.where?.fixture;
      if (row !== undefined) rows.set(row, [...(rows.get(row) ?? []), person]);
    }
    return rows;
  }, [people]);
}

/** Keeps the cell that the keys go to where one sees it. */
function useInView(id: string | undefined): void {
  useEffect(() => {
    const cell = id === undefined ? null : document.getElementById(id);
    if (cell?.closest('[role="grid"]')?.contains(document.activeElement)) {
      cell.scrollIntoView({ block: 'nearest', inline: 'nearest' });
    }
  }, [id]);
}

/** Gives the focus back to the grid when a cell closes that had it. */
function useFocusBack(grid: RefObject<HTMLElement | null>, open: boolean): void {
  const was = useRef(false);
  useEffect(() => {
    if (was.current && !open && document.activeElement === document.body) grid.current?.focus({ preventScroll: true });
    was.current = open;
  }, [grid, open]);
}
