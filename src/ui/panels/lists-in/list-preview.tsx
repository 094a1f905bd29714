import { useDeferredValue, useMemo, useState } from 'react';
import { readList } from '#exchange/csv/read-list.ts';
import { LISTS_IN_WORDS, sayGridCaution, sayHowRead, TEXT_CAUTIONS } from '#words/lists-in.ts';
import { Button } from '../../kit/button.tsx';
import { Message } from '../../kit/message.tsx';
import { useRigNow } from '../../live/open-rig.tsx';
import { Part } from '../part.tsx';
import { BringIn } from './bring-in.tsx';
import { ColumnsTable } from './columns-table.tsx';
import { HeadingChoice } from './heading-choice.tsx';
import { LinesPart } from './lines-part.tsx';
import type { OpenedList } from './opened-list.ts';
import { useLayout } from './use-layout.ts';

export interface ListPreviewProps {
  readonly opened: OpenedList;
  readonly rigId: string;
  /** Whose memory of such lists counts. */
  readonly crewId: string;
  readonly onAnother: () => void;
}

/** What a list was read as, in every column and line, before any of it is written. */
export function ListPreview({ opened, rigId, crewId, onAnother }: ListPreviewProps) {
  const { grid } = opened;
  const choice = useLayout(grid, crewId);
  // Reading some thousand lines takes a moment: a choice shows at once, what becomes of it right after.
  const layout = useDeferredValue(choice.layout);
  const rig = useDeferredValue(useRigNow());
  const list = useMemo(() => readList(grid, layout, rig), [grid, layout, rig]);
  const [leftOut, setLeftOut] = useState<ReadonlySet<number>>(new Set());
  return (
    <div className="flex flex-col gap-6">
      <div className="flex flex-wrap items-center gap-x-4 gap-y-2">
        <p className="[overflow-wrap:anywhere]">
          {sayHowRead(opened.name, opened.encoding, grid.delimiter, grid.rows.length)}
        </p>
        <Button onClick={onAnother}>{LISTS_IN_WORDS.another}</Button>
      </div>
      <Cautions opened={opened} />
      <BringIn list={list} leftOut={leftOut} layout={layout} rigId={rigId} crewId={crewId} />
      <Part title={LISTS_IN_WORDS.columns} about={LISTS_IN_WORDS.columnsAbout}>
        <div className="py-3">
          <HeadingChoice grid={grid} choice={choice} />
        </div>
        <ColumnsTable grid={grid} layout={choice.layout} list={list} onMeaning={choice.setMeaning} />
      </Part>
      <Part title={LISTS_IN_WORDS.lines} about={LISTS_IN_WORDS.linesAbout}>
        <LinesPart list={list} rig={rig} leftOut={leftOut} changeLeftOut={setLeftOut} />
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
