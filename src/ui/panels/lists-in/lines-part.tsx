import { useCallback, useMemo, useState } from 'react';
import type { FixtureList } from '#engine/list/read-list.ts';
import type { Rig } from '#engine/model/rig.ts';
import { linesAlreadyIn } from '#exchange/csv/import-plan.ts';
import { LISTS_IN_WORDS } from '#words/lists-in.ts';
import { LinkButton } from '../../kit/link-button.tsx';
import { Select } from '../../kit/select.tsx';
import { SHOWS, type Show, shownLines } from './line-choice.ts';
import { LinesTable } from './lines-table.tsx';

export interface LinesPartProps {
  readonly list: FixtureList;
  readonly rig: Rig;
  readonly leftOut: ReadonlySet<number>;
  /** Changes which lines are left out; the same function each time. */
  readonly changeLeftOut: (change: (before: ReadonlySet<number>) => ReadonlySet<number>) => void;
}

/** Which lines to look at, which of them the rig has already, and the lines themselves. */
export function LinesPart({ list, rig, leftOut, changeLeftOut }: LinesPartProps) {
  const leaveOut = useCallback((line: number) => changeLeftOut((before) => new Set(before).add(line)), [changeLeftOut]);
  const take = useCallback(
    (line: number) => changeLeftOut((before) => new Set([...before].filter((each) => each !== line))),
    [changeLeftOut],
  );
  const [show, setShow] = useState<Show>('all');
  const lines = useMemo(() => shownLines(list, show), [list, show]);
  const shows = useMemo(
    () => SHOWS.map((each) => ({ value: each, label: LISTS_IN_WORDS.shows[each](shownLines(list, each).length) })),
    [list],
  );
  const already = useMemo(() => linesAlreadyIn(rig, list), [rig, list]);
  const stillTaken = [...already].filter((line) => !leftOut.has(line)).length;
  return (
    <>
      {rig.fixtures.size === 0 ? null : (
        <p className="pt-2">
          {LISTS_IN_WORDS.alreadyThere(rig.fixtures.size)}{' '}
          {stillTaken === 0 ? null : (
            <LinkButton onClick={() => changeLeftOut((before) => new Set([...before, ...already]))}>
              {LISTS_IN_WORDS.leaveOutKnown(stillTaken)}
            </LinkButton>
          )}
        </p>
      )}
      <div className="max-w-80 py-2">
        <Select label={LISTS_IN_WORDS.show} choices={shows} value={show} onChoose={setShow} />
      </div>
      {lines.length === 0 ? (
        <p className="text-soft">{LISTS_IN_WORDS.nothingHere}</p>
      ) : (
        <LinesTable lines={lines} leftOut={leftOut} onLeaveOut={leaveOut} onTake={take} />
      )}
    </>
  );
}
