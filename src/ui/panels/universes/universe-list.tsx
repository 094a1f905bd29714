import { type KeyboardEvent, useId, useRef } from 'react';
import { SLOTS, type Universe } from '#engine/model/address.ts';
import { UNIVERSE_PAGE_WORDS as words } from '#words/slots.ts';
import { useHeight } from '../../grid/use-height.ts';
import { Mark } from '../../kit/mark.tsx';
import { lineOfKey } from './line-of-key.ts';
import { useFixedLines } from './use-fixed-lines.ts';

/** A universe to choose. */
export interface UniverseChoice {
  readonly universe: Universe;
  readonly label: string;
  readonly freeSlots: number;
  /** Whether units are in each other's way in it. */
  readonly clashes: boolean;
}

export interface UniverseListProps {
  readonly choices: readonly UniverseChoice[];
  readonly at: number;
  readonly onChoose: (universe: Universe) => void;
}

const ROW = 44;

/** The universes beside the one that is shown: arrows choose. */
export function UniverseList({ choices, at, onChoose }: UniverseListProps) {
  const id = useId();
  const scroller = useRef<HTMLDivElement>(null);
  const probe = useRef<HTMLDivElement>(null);
  const height = useHeight(probe, ROW);
  const { items, total } = useFixedLines(scroller, { count: choices.length, at, height, head: 0 });
  const press = (event: KeyboardEvent) => {
    const page = Math.floor((scroller.current?.clientHeight ?? 0) / height);
    const line = lineOfKey(event.key, { at, count: choices.length, page });
    const choice = line === undefined ? undefined : choices[line];
    if (choice === undefined) return;
    event.preventDefault();
    onChoose(choice.universe);
  };
  return (
    <div
      ref={scroller}
      role="listbox"
      tabIndex={0}
      aria-label={words.list}
      aria-activedescendant={at < 0 ? undefined : `${id}-${at}`}
      className="group relative w-48 shrink-0 overflow-y-auto border-r border-rule-strong outline-none"
      onKeyDown={press}
    >
      <div ref={probe} className="absolute h-11 w-0" />
      <div role="presentation" className="relative" style={{ height: total }}>
        {items.map(({ index, start, size }) => {
          const choice = choices[index];
          if (choice === undefined) return null;
          return (
            // Its keys are those of the list it is in.
            <div
              key={choice.universe}
              id={`${id}-${index}`}
              role="option"
              tabIndex={-1}
              aria-selected={index === at}
              aria-posinset={index + 1}
              aria-setsize={choices.length}
              className="absolute inset-x-0 border-b border-rule py-0.5 pr-3 pl-4 hover:bg-hover aria-selected:bg-selected group-focus-visible:aria-selected:outline-2 group-focus-visible:aria-selected:-outline-offset-2 sm:pl-5"
              style={{ top: start, height: size }}
              onPointerDown={() => onChoose(choice.universe)}
            >
              <ChoiceText choice={choice} />
            </div>
          );
        })}
      </div>
    </div>
  );
}

function ChoiceText({ choice: { universe, label, freeSlots, clashes } }: { readonly choice: UniverseChoice }) {
  return (
    <>
      <div className="flex items-baseline gap-2">
        <span className="font-serif text-name leading-5 font-semibold">{universe}</span>
        <span className="truncate">{label}</span>
        {clashes ? (
          <span className="ml-auto">
            <Mark severity="blocker" />
            <span className="sr-only">{words.clash}</span>
          </span>
        ) : null}
      </div>
      <div className="text-small text-soft">{words.use(SLOTS - freeSlots, freeSlots)}</div>
    </>
  );
}
