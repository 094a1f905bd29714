import { systemClock } from '#base/clock.ts';
import type { RestoreSheet } from '#engine/diff/restore.ts';
import type { Rig } from '#engine/model/rig.ts';
import { restoreTable } from '#engine/sheet/restore-sheet.ts';
import { writeSheet } from '#exchange/csv/write-sheet.ts';
import { RESTORE_STANDING, restoreHead, RESTORE_WORDS as words } from '#words/restore.ts';
import { sheetFileName, sheetHeading, sheetPartTitle } from '#words/sheets.ts';
import { Button } from '../../kit/button.tsx';
import { saveFile } from '../../kit/save-file.ts';
import type { LinesView, ShownLines } from './use-shown-lines.ts';

export interface RestoreToolsProps {
  readonly sheet: RestoreSheet;
  readonly house: Rig;
  readonly rigName: string;
  readonly record: string;
  readonly shown: ShownLines;
}

const VIEWS: readonly LinesView[] = ['open', 'all'];

/** Which lines one sees, and the sheet on paper or as a file. */
export function RestoreTools({ sheet, house, rigName, record, shown }: RestoreToolsProps) {
  const takeOut = () => {
    const at = systemClock.now();
    const text = writeSheet(restoreTable(sheet, house, RESTORE_STANDING), {
      head: restoreHead(rigName, record, at),
      heading: sheetHeading,
      part: sheetPartTitle,
      nothingStands: words.nothingToDo,
    });
    saveFile(sheetFileName('restore', rigName, at), 'text/csv;charset=utf-8', text);
  };
  return (
    <div className="flex flex-wrap items-center gap-2 print:hidden">
      <fieldset className="flex flex-wrap gap-2">
        <legend className="sr-only">{words.view}</legend>
        {VIEWS.map((each) => (
          <Button
            key={each}
            aria-pressed={shown.view === each}
            look={shown.view === each ? 'main' : 'plain'}
            className="min-w-16"
            onClick={() => shown.choose(each)}
          >
            {words.views[each]}
          </Button>
        ))}
      </fieldset>
      {shown.ticked === 0 ? null : <Button onClick={() => shown.choose('open')}>{words.hide(shown.ticked)}</Button>}
      <div className="flex flex-wrap gap-2 sm:ml-auto">
        <Button onClick={() => window.print()}>{words.print}</Button>
        <Button onClick={takeOut}>{words.csv}</Button>
      </div>
    </div>
  );
}
