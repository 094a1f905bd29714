import { useRouter } from 'next/navigation';
import { type KeyboardEvent, useEffect, useId, useMemo, useRef, useState } from 'react';
import { compareNatural } from '#engine/model/natural-order.ts';
import { createTypeIndex } from '#engine/type/search-types.ts';
import type { TypeSummary } from '#wire/library.ts';
import { LIBRARY_WORDS } from '#words/library.ts';
import { CONTROL_CLASSES } from '../../kit/field-frame.tsx';
import { typePath } from './library-address.ts';
import { TypeList } from './type-list.tsx';

export interface FindTypesProps {
  readonly crewId: string;
  readonly types: readonly TypeSummary[];
}

/** Rows that Page Up and Page Down go by. */
const PAGE = 10;

/** The library as a list that a few letters narrow: arrow keys choose in it, Enter opens, without leaving the field. */
export function FindTypes({ crewId, types }: FindTypesProps) {
  const id = useId();
  const router = useRouter();
  const field = useRef<HTMLInputElement>(null);
  const [query, setQuery] = useState('');
  const [chosen, setChosen] = useState(0);
  const sorted = useMemo(() => [...types].sort(byName), [types]);
  const index = useMemo(() => createTypeIndex(sorted), [sorted]);
  const { rows, found } = useMemo(() => index.search(query, sorted.length), [index, query, sorted]);
  const at = Math.min(chosen, rows.length - 1);
  useEffect(() => {
    // Under a thumb the keyboard would cover the list.
    if (window.matchMedia('(pointer: fine)').matches) field.current?.focus({ preventScroll: true });
  }, []);
  const narrow = (text: string) => {
    setQuery(text);
    setChosen(0);
  };
  const press = (event: KeyboardEvent) => {
    const step = STEPS[event.key];
    const row = rows[at];
    if (step !== undefined) setChosen(Math.max(0, Math.min(rows.length - 1, at + step)));
    else if (event.key === 'Enter' && row !== undefined) router.push(typePath(crewId, row.id));
    else if (event.key === 'Escape') narrow('');
    else return;
    event.preventDefault();
  };
  return (
    <div>
      <search className="sticky top-0 z-1 flex flex-wrap items-baseline gap-x-4 gap-y-1 border-b border-ink bg-paper py-2">
        <input
          ref={field}
          type="search"
          role="combobox"
          aria-label={LIBRARY_WORDS.search}
          aria-expanded="true"
          aria-controls={`${id}-list`}
          aria-activedescendant={rows.length === 0 ? undefined : `${id}-${at}`}
          aria-autocomplete="list"
          aria-describedby={`${id}-hint`}
          placeholder={LIBRARY_WORDS.search}
          autoComplete="off"
          spellCheck={false}
          className={`${CONTROL_CLASSES} max-w-sm [&::-webkit-search-cancel-button]:appearance-none`}
          value={query}
          onChange={(event) => narrow(event.currentTarget.value)}
          onKeyDown={press}
        />
        <span role="status">{LIBRARY_WORDS.found(found, types.length)}</span>
        <span id={`${id}-hint`} className="text-soft max-sm:sr-only">
          {LIBRARY_WORDS.searchHint}
        </span>
      </search>
      <TypeList id={id} crewId={crewId} rows={rows} at={at} />
      {found === 0 ? (
        <p className="py-3">{types.length === 0 ? LIBRARY_WORDS.empty : LIBRARY_WORDS.nothingFound(query)}</p>
      ) : null}
    </div>
  );
}

const STEPS: Readonly<Record<string, number>> = { ArrowDown: 1, ArrowUp: -1, PageDown: PAGE, PageUp: -PAGE };

const byName = (a: TypeSummary, b: TypeSummary) =>
  compareNatural(a.maker, b.maker) || compareNatural(a.model, b.model) || compareNatural(a.id, b.id);
