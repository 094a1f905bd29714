import { type KeyboardEvent, useId, useLayoutEffect, useRef } from 'react';
import type { DraftRow } from '#engine/draft/draft.ts';
import { suggestAttributes } from '#engine/type/attribute-names.ts';
import { DRAFT_SCREEN_WORDS } from '#words/draft-screen.ts';
import { ROW_NAMES } from '#words/drafts.ts';
import { CellLine } from '../../grid/cell-line.tsx';
import { closingOf } from '../../grid/closing.ts';
import type { Desk, OpenCell } from '../desk.ts';
import { useDesk } from '../use-desk.ts';
import { closeCell, leaveCell } from './chart-actions.ts';

export interface OpenChartCellProps {
  readonly desk: Desk;
  readonly row: DraftRow;
}

/** The open cell: one line, a line with attributes to choose from, or several lines for ranges. */
export function OpenChartCell({ desk, row }: OpenChartCellProps) {
  const open = useDesk(desk, (state) => state.open);
  if (open === undefined) return null;
  const key = `${open.cell.row} ${open.cell.column}`;
  if (open.cell.column === 'ranges') return <Lines key={key} desk={desk} open={open} />;
  return <Line key={key} desk={desk} row={row} open={open} />;
}

interface EditorProps {
  readonly desk: Desk;
  readonly open: OpenCell;
}

/** The most attributes shown at once. */
const MOST = 8;

function Line({ desk, open, row }: EditorProps & { readonly row: DraftRow }) {
  const { column } = open.cell;
  return (
    <CellLine
      label={ROW_NAMES[column]}
      text={open.text}
      how={open.how}
      offered={column === 'attribute' ? attributesFor(open.text, row) : null}
      className="z-[3]"
      onWrite={(text) => desk.set({ open: { ...open, text } })}
      onClose={(scope, onward) => closeCell(desk, scope, onward)}
      onLeave={() => leaveCell(desk)}
    />
  );
}

/** What the typed text may mean, then what the manual’s own name for it may mean. */
function attributesFor(text: string, { name }: DraftRow): readonly string[] {
  const typed = suggestAttributes(text);
  const named = text === '' ? suggestAttributes(name) : [];
  return [...new Set([...typed, ...named])].filter((each) => each !== text).slice(0, MOST);
}

function Lines({ desk, open }: EditorProps) {
  const field = useRef<HTMLTextAreaElement>(null);
  const hintId = useId();
  useLayoutEffect(() => {
    field.current?.focus({ preventScroll: true });
    field.current?.setSelectionRange(field.current.value.length, field.current.value.length);
    field.current?.closest('div')?.scrollIntoView({ block: 'nearest' });
  }, []);
  const press = (event: KeyboardEvent) => {
    if (event.nativeEvent.isComposing) return;
    event.stopPropagation();
    const closes = event.key !== 'Enter' || event.ctrlKey || event.metaKey;
    const closing = closes ? closingOf(event, 'inside') : undefined;
    if (closing === undefined) return;
    event.preventDefault();
    if (closing === 'leave') leaveCell(desk);
    else if (event.key === 'Enter') closeCell(desk, 'cell', 'down');
    else closeCell(desk, 'cell', closing.onward);
  };
  return (
    <div className="absolute top-0 left-0 z-[5] w-[26rem] max-w-[90vw] border-2 border-ink bg-sheet font-normal">
      <textarea
        ref={field}
        aria-label={ROW_NAMES.ranges}
        aria-describedby={hintId}
        spellCheck={false}
        rows={Math.min(14, Math.max(5, open.text.split('\n').length + 1))}
        value={open.text}
        className="block w-full resize-none bg-sheet px-2 py-1 outline-none"
        onChange={(event) => desk.set({ open: { ...open, text: event.currentTarget.value } })}
        onKeyDown={press}
        onBlur={({ currentTarget }) => {
          if (document.activeElement !== currentTarget) closeCell(desk, 'cell', 'stay');
        }}
      />
      <p id={hintId} className="border-t border-rule px-2 py-1 text-small text-soft">
        {DRAFT_SCREEN_WORDS.rangesHint}
      </p>
    </div>
  );
}
