import { useDeferredValue, useMemo, useState } from 'react';
import { readList } from '#exchange/csv/read-list.ts';
import { LISTS_IN_WORDS, sayGridCaution, sayHowRead, TEXT_CAUTIONS } from '#words/lists-in.ts';
import { Button } from '../../kit/button.tsx';
import { Message } from '../../kit/message.tsx';
import { Select } from '../../kit/select.tsx';
import { Part } from '../part.tsx';
import { BringIn } from './bring-in.tsx';
import { ColumnsTable } from './columns-table.tsx';
import { HeadingChoice } from './heading-choice.tsx';
import { SHOWS, type Show, shownLines, withoutLines } from './line-choice.ts';
import { LinesTable } from './lines-table.tsx';
import type { OpenedList } from './opened-list.ts';
import { useLayout } from './use-layout.ts';

export interface ListPreviewProps {
  readonly opened: OpenedList;
  readonly rigId: string;
  /** Whose memory of such lists counts; undefined while it is not known. */
  readonly crewId: string | undefined;
  readonly onAnother: () => void;
}

/** What a list was read as, in every column and line, before any of it is written. */
export function ListPreview({ opened, rigId, crewId, onAnother }: ListPreviewProps) {
  const { grid } = opened;
  const choice = useLayout(grid, crewId);
  // Reading some thousand lines takes a moment: a choice shows at once, what becomes of it right after.
  const layout = useDeferredValue(choice.layout);
  const list = useMemo(() => readList(grid, layout), [grid, layout]);
  const [show, setShow] = useState<Show>('all');
  const [leftOut, setLeftOut] = useState<ReadonlySet<number>>(new Set());
  const taken = useMemo(() => withoutLines(list, leftOut), [list, leftOut]);
  const lines = useMemo(() => shownLines(list, show), [list, show]);
  const shows = useMemo(
    () => SHOWS.map((each) => ({ value: each, label: LISTS_IN_WORDS.shows[each](shownLines(list, each).length) })),
    [list],
  );
  return (
    <div className="flex flex-col gap-6">
      <div className="flex flex-wrap items-center gap-x-4 gap-y-2">
        <p className="[overflow-wrap:anywhere]">
          {sayHowRead(opened.name, opened.encoding, grid.delimiter, grid.rows.length)}
        </p>
        <Button onClick={onAnother}>{LISTS_IN_WORDS.another}</Button>
      </div>
      <Cautions opened={opened} />
      <Part title={LISTS_IN_WORDS.columns} about={LISTS_IN_WORDS.columnsAbout}>
        <div className="py-3">
          <HeadingChoice grid={grid} choice={choice} />
        </div>
        <ColumnsTable grid={grid} layout={choice.layout} list={list} onMeaning={choice.setMeaning} />
      </Part>
      <Part title={LISTS_IN_WORDS.lines} about={LISTS_IN_WORDS.linesAbout}>
        <BringIn list={taken} layout={layout} rigId={rigId} crewId={crewId} />
        <div className="max-w-80 py-2">
          <Select label={LISTS_IN_WORDS.show} choices={shows} value={show} onChoose={setShow} />
        </div>
        {lines.length === 0 ? (
          <p className="text-soft">{LISTS_IN_WORDS.nothingHere}</p>
        ) : (
          <LinesTable
            lines={lines}
            leftOut={leftOut}
            onLeaveOut={(line) => setLeftOut((before) => new Set(before).add(line))}
            onTake={(line) => setLeftOut((before) => new Set([...before].filter((each) => each !== line)))}
          />
        )}
      </Part>
    </div>
  );
}

function Cautions({ opened }: { readonly opened: OpenedList }) {
  const said = [
    ...opened.textCautions.map((caution) => TEXT_CAUTIONS[caution]),
    ...opened.grid.cautions.slice(0, 5).map(sayGridCaution),
  ];
  return said.map((what) => <Message key={what} severity="caution" said={{ what }} />);
}
