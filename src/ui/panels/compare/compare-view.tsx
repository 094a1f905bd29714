import { useMemo, useState } from 'react';
import { systemClock } from '#base/clock.ts';
import { type Tasks, tasksOf } from '#engine/diff/tasks.ts';
import type { Rig } from '#engine/model/rig.ts';
import { taskSheet } from '#engine/sheet/task-sheet.ts';
import { writeSheet } from '#exchange/csv/write-sheet.ts';
import { changeSheetHead, differenceSentence, COMPARE_RIGS_WORDS as words } from '#words/compare.ts';
import { sheetFileName, sheetHeading, sheetPartTitle } from '#words/sheets.ts';
import { TASK_STANDING } from '#words/task-cells.ts';
import { Button } from '../../kit/button.tsx';
import { saveFile } from '../../kit/save-file.ts';
import { PrintHead } from '../../print/print-head.tsx';
import { usePrinting } from '../../print/use-printing.ts';
import { ChangeSheet } from './change-sheet.tsx';
import { ChangeTable } from './change-table.tsx';
import { countKinds } from './count-kinds.ts';
import { KindChoice, type TaskKind } from './kind-choice.tsx';

export interface CompareViewProps {
  readonly before: Rig;
  readonly after: Rig;
  /** What each is called within a sentence: `revision 3`, `now`. */
  readonly beforeName: string;
  readonly afterName: string;
  /** Of which rig: heads the printed sheet and names the file. */
  readonly rigName: string;
  /** How it is shown at first. */
  readonly first?: View;
}

type View = keyof typeof words.views;
const VIEWS: readonly View[] = ['table', 'sheet'];

/** What differs between two rigs: counted, as a table, and as the sheet of what somebody has to do, to be printed or taken out. */
export function CompareView(props: CompareViewProps) {
  const { before, after, beforeName, afterName } = props;
  const tasks = useMemo(() => tasksOf(before, after), [before, after]);
  const [view, setView] = useState<View>(props.first ?? 'table');
  const [kind, setKind] = useState<TaskKind>();
  const counts = useMemo(() => countKinds(tasks), [tasks]);
  const chosen = kind !== undefined && counts.has(kind) ? kind : undefined;
  const isEmpty = tasks.units.length + tasks.rig.length === 0;
  return (
    <div className="flex flex-col gap-4">
      <p role="status" className="text-large print:hidden">
        {differenceSentence(tasks, beforeName, afterName)}
      </p>
      {isEmpty ? null : (
        <>
          <Tools {...props} tasks={tasks} view={view} onView={setView} />
          {view === 'table' ? (
            <>
              <KindChoice counts={counts} chosen={chosen} onChoose={setKind} />
              <ChangeTable tasks={tasks} kind={chosen} />
            </>
          ) : (
            <>
              <p className="text-soft print:hidden">{words.sheetAbout}</p>
              <ChangeSheet tasks={tasks} after={after} />
            </>
          )}
        </>
      )}
    </div>
  );
}

interface ToolsProps extends CompareViewProps {
  readonly tasks: Tasks;
  readonly view: View;
  readonly onView: (view: View) => void;
}

/** Which view, and the sheet on paper or as a file. */
function Tools({ tasks, view, onView, ...props }: ToolsProps) {
  const { rigName, after } = props;
  // Drawn anew on the way to paper, so that it says when that was.
  usePrinting();
  const headAt = (madeAt: number) =>
    changeSheetHead(rigName, { before: props.beforeName, after: props.afterName }, madeAt);
  const takeOut = () => {
    const at = systemClock.now();
    const sheet = taskSheet(tasks, after, TASK_STANDING);
    const text = writeSheet(sheet, {
      head: headAt(at),
      heading: sheetHeading,
      part: sheetPartTitle,
      nothingStands: words.nothingToDo,
    });
    saveFile(sheetFileName('changes', rigName, at), 'text/csv;charset=utf-8', text);
  };
  return (
    <>
      <PrintHead lines={headAt(systemClock.now())} />
      <div className="flex flex-wrap items-center gap-2 print:hidden">
        <fieldset className="flex flex-wrap gap-2">
          <legend className="sr-only">{words.view}</legend>
          {VIEWS.map((each) => (
            <Button
              key={each}
              aria-pressed={view === each}
              look={view === each ? 'main' : 'plain'}
              onClick={() => onView(each)}
            >
              {words.views[each]}
            </Button>
          ))}
        </fieldset>
        <div className="flex flex-wrap gap-2 sm:ml-auto">
          <Button onClick={() => window.print()}>{words.print}</Button>
          <Button onClick={takeOut}>{words.csv}</Button>
        </div>
      </div>
    </>
  );
}
