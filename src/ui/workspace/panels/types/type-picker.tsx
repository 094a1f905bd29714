import { type KeyboardEvent, useEffect, useId, useMemo, useRef, useState } from 'react';
import { createTypeIndex } from '#engine/type/search-types.ts';
import type { TypeSummary } from '#wire/library.ts';
import { LIBRARY_WORDS, modeWord, revisionWord } from '#words/library.ts';
import { PICKER_WORDS } from '#words/rig-types.ts';
import { CONTROL_CLASSES } from '../../../kit/field-frame.tsx';
import { LinkButton } from '../../../kit/link-button.tsx';
import { Asked } from '../../../panels/library/asked.tsx';
import { HazardMarks } from '../../../panels/library/hazard-marks.tsx';
import { useTypes } from '../../../panels/library/use-library.ts';

export interface TypePickerProps {
  readonly crewId: string;
  /** The type of the rig that is looked for; null when the rig gets a new one. */
  readonly type: string | null;
  readonly onPick: (type: TypeSummary) => void;
  readonly onLeave: () => void;
}

/** Finds a type of the crew's library: a few letters, arrow keys, Enter. */
export function TypePicker({ crewId, type, onPick, onLeave }: TypePickerProps) {
  const types = useTypes(crewId);
  return (
    <section className="flex flex-col gap-2">
      <h3>{PICKER_WORDS.title(type)}</h3>
      <Asked answer={types}>
        {(known) => <PickFrom types={known} first={type ?? ''} onPick={onPick} onLeave={onLeave} />}
      </Asked>
      <div>
        <LinkButton onClick={onLeave}>{PICKER_WORDS.back}</LinkButton>
      </div>
    </section>
  );
}

interface PickFromProps extends Pick<TypePickerProps, 'onPick' | 'onLeave'> {
  readonly types: readonly TypeSummary[];
  /** What is looked for at first. */
  readonly first: string;
}

/** Rows that are shown. */
const MOST = 12;

function PickFrom({ types, first, onPick, onLeave }: PickFromProps) {
  const id = useId();
  const field = useRef<HTMLInputElement>(null);
  const index = useMemo(() => createTypeIndex(types), [types]);
  // What a list calls a type is rarely all the library calls it: the words that lead somewhere are a start.
  const [query, setQuery] = useState(() => (index.search(first, 1).found > 0 ? first : ''));
  const [chosen, setChosen] = useState(0);
  const { rows, found } = useMemo(() => index.search(query, MOST), [index, query]);
  const at = Math.min(chosen, rows.length - 1);
  useEffect(() => field.current?.focus({ preventScroll: true }), []);
  const press = (event: KeyboardEvent) => {
    const step = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0;
    const row = rows[at];
    if (step !== 0) setChosen(Math.max(0, Math.min(rows.length - 1, at + step)));
    else if (event.key === 'Enter' && row !== undefined) onPick(row);
    else if (event.key === 'Escape') onLeave();
    else return;
    event.preventDefault();
  };
  return (
    <>
      <input
        ref={field}
        type="search"
        role="combobox"
        aria-label={PICKER_WORDS.search}
        aria-expanded="true"
        aria-controls={id}
        aria-activedescendant={rows.length === 0 ? undefined : `${id}-${at}`}
        aria-autocomplete="list"
        placeholder={PICKER_WORDS.search}
        autoComplete="off"
        spellCheck={false}
        className={CONTROL_CLASSES}
        value={query}
        onChange={(event) => {
          setQuery(event.currentTarget.value);
          setChosen(0);
        }}
        onKeyDown={press}
      />
      <div id={id} role="listbox" aria-label={LIBRARY_WORDS.list}>
        {rows.map((row, place) => (
          <button
            key={row.id}
            id={`${id}-${place}`}
            type="button"
            role="option"
            aria-selected={place === at}
            tabIndex={-1}
            className="flex w-full flex-wrap items-baseline gap-x-3 border-b border-rule px-2 py-1 text-left hover:bg-hover aria-selected:bg-selected"
            onClick={() => onPick(row)}
          >
            <span className="font-serif text-large">{`${row.maker} ${row.model}`}</span>
            <span className="ml-auto text-soft">{revisionWord({ number: row.revision, origin: row.origin })}</span>
            <span className="w-full text-soft">{row.modes.map(modeWord).join(' · ') || LIBRARY_WORDS.noModes}</span>
            <HazardMarks hazards={row.hazards} />
          </button>
        ))}
      </div>
      <p role="status" className="text-soft">
        {found === 0 ? PICKER_WORDS.nothing(query) : found > MOST ? PICKER_WORDS.more(found) : ''}
      </p>
    </>
  );
}
