import { useMemo } from 'react';
import type { Tasks } from '#engine/diff/tasks.ts';
import { type TaskCells, taskLines } from '#engine/sheet/task-sheet.ts';
import { changedUnit, COMPARE_RIGS_WORDS as words } from '#words/compare.ts';
import { rigTaskCells, unitTaskCells } from '#words/task-cells.ts';
import { type Column, Table } from '../../kit/table.tsx';
import { ShowMore, useShown } from '../../print/show-more.tsx';
import type { TaskKind } from './kind-choice.tsx';
import { WasIs } from './was-is.tsx';

interface Row extends TaskCells {
  readonly key: string;
  readonly name: string;
}

const COLUMNS: readonly Column<Row>[] = [
  { key: 'unit', heading: words.unit, cell: ({ name }) => name },
  { key: 'what', heading: words.what, cell: ({ what }) => what },
  { key: 'change', heading: words.change, cell: ({ before, after }) => <WasIs before={before} after={after} /> },
];

export interface ChangeTableProps {
  readonly tasks: Tasks;
  /** Only these; all when undefined. */
  readonly kind: TaskKind | undefined;
}

/** What differs between two rigs, line by line: what was and what is to be. */
export function ChangeTable({ tasks, kind }: ChangeTableProps) {
  const lines = useMemo(
    () => taskLines(tasks).filter(({ task }) => kind === undefined || task.kind === kind),
    [tasks, kind],
  );
  const { shown, onMore } = useShown(lines.length);
  const rows = lines.slice(0, shown).map((line): Row => {
    const { key } = line.task;
    return line.at === 'unit'
      ? { key, name: changedUnit(line.task), ...unitTaskCells(line.task) }
      : { key, name: words.ofRig, ...rigTaskCells(line.task) };
  });
  return (
    <>
      <Table caption={words.caption} columns={COLUMNS} rows={rows} keyOf={({ key }) => key} rowName="unit" />
      <ShowMore shown={shown} all={lines.length} onMore={onMore} />
    </>
  );
}
