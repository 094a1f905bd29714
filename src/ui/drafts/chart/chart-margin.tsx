import { useLayoutEffect, useRef } from 'react';
import type { DraftRow } from '#engine/draft/draft.ts';
import { type DraftTrouble, stopsPublishing } from '#engine/draft/draft-trouble.ts';
import { isGuess } from '#engine/draft/guess.ts';
import type { Severity } from '#engine/model/finding.ts';
import { DRAFT_SCREEN_WORDS } from '#words/draft-screen.ts';
import { draftTroubleSentence } from '#words/drafts.ts';
import { Mark } from '../../kit/mark.tsx';
import type { Desk } from '../desk.ts';

export interface ChartMarginProps {
  readonly desk: Desk;
  readonly row: DraftRow;
  readonly troubles: readonly DraftTrouble[];
  /** `open` beside the cursor: all there is to say, over the rows below. */
  readonly state: 'rest' | 'open';
}

interface Note {
  readonly severity: Severity;
  readonly text: string;
}

/** What there is to check about a row, level with it: the gravest in one line, and all of it beside the cursor. */
export function ChartMargin({ desk, row, troubles, state }: ChartMarginProps) {
  const notes = notesOf(desk, row, troubles);
  const [first] = notes;
  if (first === undefined) return null;
  if (state === 'open') return <OpenNotes notes={notes} />;
  return (
    <div className="flex min-w-0 items-baseline gap-1">
      <Mark severity={first.severity} />
      <span className="min-w-0 truncate">{first.text}</span>
      {notes.length === 1 ? null : (
        <span className="shrink-0 text-soft">{DRAFT_SCREEN_WORDS.more(notes.length - 1)}</span>
      )}
    </div>
  );
}

/** All notes in full, over the rows below, or above where the chart ends. */
function OpenNotes({ notes }: { readonly notes: readonly Note[] }) {
  const box = useRef<HTMLUListElement>(null);
  useLayoutEffect(() => {
    const node = box.current;
    const end = node?.closest('[role="grid"]')?.getBoundingClientRect().bottom;
    if (node === null || end === undefined) return;
    delete node.dataset.up;
    if (node.getBoundingClientRect().bottom > end) node.dataset.up = '';
  });
  return (
    <ul
      ref={box}
      className="absolute inset-x-0 top-0 z-[2] border-b-2 border-rule-strong bg-selected px-3 py-[2px] data-up:top-auto data-up:bottom-0 data-up:border-t-2 data-up:border-b-0"
    >
      {notes.map((note) => (
        <li key={note.text} className="flex items-baseline gap-1">
          <Mark severity={note.severity} />
          <span>{note.text}</span>
        </li>
      ))}
    </ul>
  );
}

function notesOf(desk: Desk, row: DraftRow, troubles: readonly DraftTrouble[]): readonly Note[] {
  const { draft } = desk.store.reading();
  const said = troubles.map((trouble): Note => {
    const severity = stopsPublishing(trouble) ? 'blocker' : 'caution';
    return { severity, text: withoutPlace(draftTroubleSentence(trouble, draft)) };
  });
  const guess: Note[] = isGuess(row.attribute) ? [{ severity: 'note', text: DRAFT_SCREEN_WORDS.guessed }] : [];
  return [...said.toSorted((a, b) => (a.severity < b.severity ? -1 : 1)), ...guess];
}

/** The place stands there already: the note is level with it. */
function withoutPlace(sentence: string): string {
  const text = sentence.slice(sentence.indexOf(': ') + 2);
  return text.charAt(0).toUpperCase() + text.slice(1);
}
