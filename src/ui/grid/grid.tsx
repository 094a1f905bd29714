import { type CSSProperties, useCallback, useEffect, useId, useRef } from 'react';
import { SHEET_WORDS } from '#words/sheet.ts';
import { lineAt, lineCount, lineOf } from '../live/rows/lines.ts';
import { widthOf } from './column-settings.ts';
import type { BesideCommand } from './commands.ts';
import { GridHead } from './grid-head.tsx';
import { GridRow, type Margin } from './grid-row.tsx';
import { GroupLine } from './group-line.tsx';
import { spanOf } from './selection.ts';
import type { Sheet } from './sheet.ts';
import { useColumnInView } from './use-column-in-view.ts';
import { useGridClipboard } from './use-grid-clipboard.ts';
import { useGridKeys } from './use-grid-keys.ts';
import { useGridPointer } from './use-grid-pointer.ts';
import { useHeight } from './use-height.ts';
import { useLines } from './use-lines.ts';
import { useSheet } from './use-sheet.ts';

export interface GridProps {
  readonly sheet: Sheet;
  /** What stands in the margin beside each row. */
  readonly margin: Margin;
  /** Called for keys that open something beside the sheet. */
  readonly onBeside: (command: BesideCommand['kind']) => void;
  /** `readonly` says to a screen reader that nothing can be written. */
  readonly access: 'writable' | 'readonly';
}

const ROW = 25;
const HEAD = 33;

/** The sheet as a WAI-ARIA grid of real elements: only the lines in the window are drawn, and each follows its own row. */
export function Grid({ sheet, margin, onBeside, access }: GridProps) {
  const gridId = useId();
  const scroller = useRef<HTMLDivElement>(null);
  const probe = useRef<HTMLDivElement>(null);
  const rowHeight = useHeight(probe, ROW);
  const layout = useSheet(sheet, (state) => state.layout);
  const columns = useSheet(sheet, (state) => state.columns);
  const settings = useSheet(sheet, (state) => state.settings);
  const selection = useSheet(sheet, (state) => state.selection);
  const editing = useSheet(sheet, (state) => state.editing?.cell);
  const { items, height } = useLines(sheet, layout, scroller, { row: rowHeight, head: HEAD });
  const pageLines = useCallback(
    () => Math.floor(((scroller.current?.clientHeight ?? 0) - HEAD) / rowHeight),
    [rowHeight],
  );
  const onKeyDown = useGridKeys(sheet, pageLines, onBeside);
  const pointer = useGridPointer(sheet);
  const clipboard = useGridClipboard(sheet);
  useFocusBack(scroller, editing !== undefined);
  useColumnInView(scroller, selection?.corner.column);

  const span = selection && spanOf(sheet.ground(), selection);
  const cursor = selection?.cursor;
  const cursorLine = cursor ? lineOf(sheet.ground().order, cursor.row) : -1;
  const widths = Object.fromEntries(columns.map((column) => [`--w-${column}`, `${widthOf(settings, column)}px`]));
  return (
    <div
      ref={scroller}
      id={gridId}
      role="grid"
      tabIndex={0}
      aria-label={SHEET_WORDS.grid}
      aria-rowcount={lineCount(layout) + 1}
      aria-colcount={columns.length + 1}
      aria-multiselectable="true"
      aria-readonly={access === 'readonly'}
      aria-activedescendant={cursor ? `${gridId}-${cursor.row}-${cursor.column}` : undefined}
      className="group/grid relative h-full overflow-auto bg-sheet outline-none select-none [--margin:20.5rem] @max-[70rem]/sheet:[--margin:2.5rem]"
      style={widths as CSSProperties}
      onKeyDown={onKeyDown}
      {...pointer}
      {...clipboard}
    >
      <GridHead sheet={sheet} gridId={gridId} />
      <div ref={probe} className="absolute h-row w-0" />
      <div role="rowgroup" className="relative" style={{ height }}>
        {items.map(({ index, start, size }) => {
          const line = lineAt(layout, index);
          if (line === undefined) return null;
          const top = start - HEAD;
          if (line.kind === 'heading') {
            const { group } = line;
            return (
              <GroupLine
                key={`g${group.key}`}
                group={group}
                line={index}
                top={top}
                height={size}
                columns={columns.length + 1}
              />
            );
          }
          const selected = span !== undefined && index >= span.top && index <= span.bottom;
          return (
            <GridRow
              key={line.id}
              sheet={sheet}
              id={line.id}
              gridId={gridId}
              line={index}
              top={top}
              columns={columns}
              from={selected ? span.left : -1}
              to={selected ? span.right : -1}
              cursor={index === cursorLine ? cursor?.column : undefined}
              state={editing?.row === line.id ? 'editing' : 'shown'}
              margin={margin}
            />
          );
        })}
      </div>
    </div>
  );
}

/** Gives the focus back to the grid when a cell closes that had it. */
function useFocusBack(grid: { readonly current: HTMLElement | null }, editing: boolean): void {
  const was = useRef(false);
  useEffect(() => {
    if (was.current && !editing && document.activeElement === document.body)
      grid.current?.focus({ preventScroll: true });
    was.current = editing;
  }, [grid, editing]);
}
