import { type KeyboardEvent, type RefObject, useState } from 'react';
import { SHEET_WORDS } from '#words/sheet.ts';
import { findRows } from '../grid/find-rows.ts';
import { selectCell } from '../grid/selection.ts';
import type { Sheet } from '../grid/sheet.ts';

export interface FindFieldProps {
  readonly sheet: Sheet;
  readonly field: RefObject<HTMLInputElement | null>;
  /** Gives the focus back to the sheet. */
  readonly onLeave: () => void;
}

interface Found {
  readonly text: string;
  readonly at: number;
  readonly of: number;
}

/** Finds a unit, channel or address. Enter goes to the first that is meant, Enter again to the next; Escape back to the sheet. */
export function FindField({ sheet, field, onLeave }: FindFieldProps) {
  const [text, setText] = useState('');
  const [found, setFound] = useState<Found>();
  const go = (step: 1 | -1) => {
    const rows = findRows(sheet.ground().order, text);
    const again = found?.text === text && rows.length > 0;
    const at = again ? (found.at + step + rows.length) % rows.length : 0;
    setFound({ text, at, of: rows.length });
    const row = rows[at];
    const column = sheet.state().selection?.cursor.column ?? sheet.state().columns[0];
    if (row !== undefined && column !== undefined) sheet.select(selectCell({ row, column }));
  };
  const press = (event: KeyboardEvent) => {
    if (event.key === 'Enter' && text.trim() !== '') go(event.shiftKey ? -1 : 1);
    else if (event.key === 'Escape' || event.key === 'ArrowDown') onLeave();
    else return;
    event.preventDefault();
  };
  const told = found?.text === text ? SHEET_WORDS.found(found.at + 1, found.of) : '';
  return (
    <search className="flex w-[14.5rem] max-w-full max-sm:w-full items-center border-b border-edge focus-within:border-ink">
      <input
        ref={field}
        type="search"
        aria-label={SHEET_WORDS.find}
        placeholder={SHEET_WORDS.find}
        autoComplete="off"
        spellCheck={false}
        className="min-h-control min-w-0 flex-1 bg-transparent px-1 outline-none placeholder:text-soft"
        value={text}
        onChange={(event) => setText(event.currentTarget.value)}
        onKeyDown={press}
      />
      <span role="status" className="shrink-0 px-1 text-small text-soft">
        {told}
      </span>
    </search>
  );
}
