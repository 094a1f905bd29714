import Link from 'next/link';
import type { TypeSummary } from '#wire/library.ts';
import { LIBRARY_WORDS, modeWord, revisionWord } from '#words/library.ts';
import { HazardMarks } from './hazard-marks.tsx';

export interface TypeOptionProps {
  readonly id: string;
  readonly href: string;
  readonly type: TypeSummary;
  readonly chosen: boolean;
  /** Its number among the rows, from 1, and how many there are. */
  readonly place: number;
  readonly of: number;
}

export const TYPE_COLUMNS =
  'grid items-center gap-x-4 grid-cols-[minmax(0,1.2fr)_minmax(0,1.6fr)_minmax(0,3fr)_minmax(0,1.6fr)_4.5rem] max-sm:flex max-sm:flex-wrap';

/** One type: maker, model, modes with their slots, what can hurt, revision. */
export function TypeOption({ id, href, type, chosen, place, of }: TypeOptionProps) {
  const modes = type.modes.map(modeWord).join(' · ') || LIBRARY_WORDS.noModes;
  return (
    <Link
      id={id}
      href={href}
      prefetch={false}
      role="option"
      aria-selected={chosen}
      aria-posinset={place}
      aria-setsize={of}
      tabIndex={-1}
      className={`${TYPE_COLUMNS} min-h-row border-b border-rule px-2 py-0.5 hover:bg-hover aria-selected:bg-selected touch:aria-selected:bg-transparent max-sm:py-2`}
    >
      <span className="truncate max-sm:whitespace-normal">{type.maker}</span>
      <span className="truncate font-serif text-large max-sm:whitespace-normal">{type.model}</span>
      <span className="truncate text-soft max-sm:order-1 max-sm:w-full max-sm:whitespace-normal">{modes}</span>
      <span className="truncate max-sm:order-2 max-sm:whitespace-normal">
        <HazardMarks hazards={type.hazards} />
      </span>
      <span className="text-right text-soft max-sm:ml-auto">
        {revisionWord({ number: type.revision, origin: type.origin })}
      </span>
    </Link>
  );
}
