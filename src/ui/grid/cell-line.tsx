import { type KeyboardEvent, useId, useLayoutEffect, useRef, useState } from 'react';
import { joinClasses } from '../kit/join-classes.ts';
import { closingOf } from './closing.ts';
import type { Editing } from './sheet.ts';
import type { Onward } from './sheet-actions.ts';
import { SuggestionList } from './suggestion-list.tsx';

export interface CellLineProps {
  readonly label: string;
  readonly text: string;
  readonly how: Editing['how'];
  /** Values one arrow away; null for a cell that offers none. */
  readonly offered: readonly string[] | null;
  readonly className?: string;
  readonly onWrite: (text: string) => void;
  readonly onClose: (scope: 'cell' | 'selection', onward: Onward) => void;
  readonly onLeave: () => void;
}

/** The open cell of a sheet or a chart as one line of text: which keys close it, which choose among what is offered. */
export function CellLine({ label, text, how, offered, className, onWrite, onClose, onLeave }: CellLineProps) {
  const listId = useId();
  const input = useRef<HTMLInputElement>(null);
  const [chosen, setChosen] = useState(-1);
  const choices = offered ?? [];
  useLayoutEffect(() => {
    const field = input.current;
    field?.focus({ preventScroll: true });
    field?.setSelectionRange(field.value.length, field.value.length);
  }, []);
  const press = (event: KeyboardEvent) => {
    if (event.nativeEvent.isComposing) return;
    event.stopPropagation();
    const step = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0;
    if (step !== 0 && choices.length > 0) {
      event.preventDefault();
      setChosen(Math.max(-1, Math.min(choices.length - 1, chosen + step)));
      return;
    }
    const closing = closingOf(event, how);
    if (closing === undefined) return;
    event.preventDefault();
    if (closing === 'leave') return onLeave();
    const value = choices[chosen];
    if (value !== undefined) onWrite(value);
    onClose(closing.scope, closing.onward);
  };
  const take = (value: string) => {
    onWrite(value);
    onClose('cell', 'down');
  };
  const combobox = {
    role: 'combobox',
    'aria-expanded': choices.length > 0,
    'aria-controls': listId,
    'aria-autocomplete': 'list',
    'aria-activedescendant': chosen >= 0 && chosen < choices.length ? `${listId}-${chosen}` : undefined,
  } as const;
  return (
    <>
      <input
        ref={input}
        {...(offered === null ? {} : combobox)}
        aria-label={label}
        autoComplete="off"
        spellCheck={false}
        value={text}
        className={joinClasses(
          'absolute inset-0 bg-sheet px-2 text-inherit outline-2 -outline-offset-2 outline-ink',
          className,
        )}
        onChange={(event) => {
          setChosen(-1);
          onWrite(event.currentTarget.value);
        }}
        onKeyDown={press}
        onBlur={({ currentTarget }) => {
          // A person who only goes to another window comes back to what they were typing.
          if (document.activeElement !== currentTarget) onClose('cell', 'stay');
        }}
      />
      {offered === null ? null : (
        <SuggestionList id={listId} anchor={input} offered={offered} chosen={chosen} onTake={take} />
      )}
    </>
  );
}
