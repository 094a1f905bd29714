import { type KeyboardEvent, useId, useLayoutEffect, useRef, useState } from 'react';
import { COLUMN_WORDS } from '#words/sheet.ts';
import type { RowView } from '../live/row-views.ts';
import { closingOf } from './closing.ts';
import { isWritable } from './plans/write-cells.ts';
import type { Editing, Sheet } from './sheet.ts';
import { closeCell, leaveCell } from './sheet-actions.ts';
import { SuggestionList } from './suggestion-list.tsx';
import { knownValues, suggest } from './suggestions.ts';
import { useSheet } from './use-sheet.ts';

export interface CellEditorProps {
  readonly sheet: Sheet;
  readonly row: RowView;
}

/** The open cell: a text field with the values that are in use already, one arrow away. */
export function CellEditor({ sheet, row }: CellEditorProps) {
  const editing = useSheet(sheet, (state) => state.editing);
  if (editing === undefined) return null;
  const { cell } = editing;
  return <OpenCell key={`${cell.row} ${cell.column}`} sheet={sheet} row={row} editing={editing} />;
}

function OpenCell({ sheet, row, editing }: CellEditorProps & { readonly editing: Editing }) {
  const listId = useId();
  const input = useRef<HTMLInputElement>(null);
  const [chosen, setChosen] = useState(-1);
  const column = editing.cell.column;
  // Gathered once: others may edit while one types, and a list that changes under the hand helps nobody.
  const [known] = useState(() => (isWritable(column) ? knownValues(sheet.store.rig(), row.fixture, column) : []));
  const offered = suggest(known, editing.text);

  useLayoutEffect(() => {
    const field = input.current;
    field?.focus({ preventScroll: true });
    field?.setSelectionRange(field.value.length, field.value.length);
  }, []);

  const write = (text: string) => sheet.set({ editing: { ...editing, text } });
  const take = (text: string) => {
    write(text);
    closeCell(sheet, 'cell', 'down');
  };
  const press = (event: KeyboardEvent) => {
    if (event.nativeEvent.isComposing) return;
    event.stopPropagation();
    const step = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0;
    if (step !== 0 && offered.length > 0) {
      event.preventDefault();
      setChosen(Math.max(-1, Math.min(offered.length - 1, chosen + step)));
      return;
    }
    const closing = closingOf(event, editing.how);
    if (closing === undefined) return;
    event.preventDefault();
    if (closing === 'leave') leaveCell(sheet);
    else {
      const value = offered[chosen];
      if (value !== undefined) write(value);
      closeCell(sheet, closing.scope, closing.onward);
    }
  };

  return (
    <>
      <input
        ref={input}
        role="combobox"
        aria-label={COLUMN_WORDS[column].name}
        aria-expanded={offered.length > 0}
        aria-controls={listId}
        aria-autocomplete="list"
        aria-activedescendant={chosen >= 0 && chosen < offered.length ? `${listId}-${chosen}` : undefined}
        autoComplete="off"
        spellCheck={false}
        value={editing.text}
        className="absolute inset-0 bg-sheet px-2 text-inherit outline-2 -outline-offset-2 outline-ink"
        onChange={(event) => {
          setChosen(-1);
          write(event.currentTarget.value);
        }}
        onKeyDown={press}
        onBlur={({ currentTarget }) => {
          // A person who only goes to another window comes back to what they were typing.
          if (document.activeElement !== currentTarget) closeCell(sheet, 'cell', 'stay');
        }}
      />
      <SuggestionList id={listId} anchor={input} offered={offered} chosen={chosen} onTake={take} />
    </>
  );
}
