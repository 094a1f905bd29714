import { type KeyboardEvent, useId, useLayoutEffect, useRef, useState } from 'react';
import type { DraftRow } from '#engine/draft/draft.ts';
import { suggestAttributes } from '#engine/type/attribute-names.ts';
import { DRAFT_SCREEN_WORDS } from '#words/draft-screen.ts';
import { ROW_NAMES } from '#words/drafts.ts';
import { closingOf } from '../../grid/closing.ts';
import { SuggestionList } from '../../grid/suggestion-list.tsx';
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
  const listId = useId();
  const input = useRef<HTMLInputElement>(null);
  const [chosen, setChosen] = useState(-1);
  const { column } = open.cell;
  const offered = column === 'attribute' ? attributesFor(open.text, row) : [];
  useLayoutEffect(() => {
    const field = input.current;
    field?.focus({ preventScroll: true });
    field?.setSelectionRange(field.value.length, field.value.length);
  }, []);
  const write = (text: string) => desk.set({ open: { ...open, text } });
  const press = (event: KeyboardEvent) => {
    if (event.nativeEvent.isComposing) return;
    event.stopPropagation();
    const step = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0;
    if (step !== 0 && offered.length > 0) {
      event.preventDefault();
      setChosen(Math.max(-1, Math.min(offered.length - 1, chosen + step)));
      return;
    }
    const closing = closingOf(event, open.how);
    if (closing === undefined) return;
    event.preventDefault();
    if (closing === 'leave') return leaveCell(desk);
    const value = offered[chosen];
    if (value !== undefined) write(value);
    closeCell(desk, closing.scope, closing.onward);
  };
  const combobox = {
    role: 'combobox',
    'aria-expanded': offered.length > 0,
    'aria-controls': listId,
    'aria-autocomplete': 'list',
    'aria-activedescendant': chosen >= 0 && chosen < offered.length ? `${listId}-${chosen}` : undefined,
  } as const;
  return (
    <>
      <input
        ref={input}
        {...(column === 'attribute' ? combobox : {})}
        aria-label={ROW_NAMES[column]}
        autoComplete="off"
        spellCheck={false}
        value={open.text}
        className="absolute inset-0 z-[3] bg-sheet px-2 text-inherit outline-2 -outline-offset-2 outline-ink"
        onChange={(event) => {
          setChosen(-1);
          write(event.currentTarget.value);
        }}
        onKeyDown={press}
        onBlur={({ currentTarget }) => {
          // A person who only goes to another window comes back to what they were typing.
          if (document.activeElement !== currentTarget) closeCell(desk, 'cell', 'stay');
        }}
      />
      {column === 'attribute' ? (
        <SuggestionList
          id={listId}
          anchor={input}
          offered={offered}
          chosen={chosen}
          onTake={(text) => {
            write(text);
            closeCell(desk, 'cell', 'down');
          }}
        />
      ) : null}
    </>
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
