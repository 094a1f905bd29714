import { type ReactNode, useCallback, useEffect, useRef, useState } from 'react';
import { randomId } from '#base/random-id.ts';
import type { Finding, Severity } from '#engine/model/finding.ts';
import type { FixtureId } from '#engine/model/ids.ts';
import { LOCK_WORDS } from '#words/locks.ts';
import type { BesideCommand } from '../grid/commands.ts';
import { keepSelection } from '../grid/keep-selection.ts';
import { lockSelected } from '../grid/lock-selected.ts';
import { cellOfFinding, nextFinding } from '../grid/next-finding.ts';
import { selectCell } from '../grid/selection.ts';
import { createSheet, type Sheet, type ViewKeeper } from '../grid/sheet.ts';
import { showClearing, showSeries } from '../grid/show-plan.ts';
import { useSheet } from '../grid/use-sheet.ts';
import { useMyName } from '../live/my-name.ts';
import type { RigStore } from '../live/rig-store.ts';
import { Ribbon } from '../universes/ribbon.tsx';
import { LostLines } from './lost-line.tsx';
import { NoticeLine } from './notice-line.tsx';
import { OpenPanel } from './open-panel.tsx';
import { PreviewDialog } from './preview-dialog.tsx';
import { ReaderLine } from './reader-line.tsx';
import { Rows } from './rows.tsx';
import { SheetTools } from './sheet-tools.tsx';
import { PHONE, useMedia } from './use-media.ts';

export interface SheetScreenProps {
  readonly store: RigStore;
  readonly keeper: ViewKeeper;
  /** The way to the page that takes lists in. */
  readonly listsIn: ReactNode;
}

/** The sheet of an open rig with everything around it, below the banner. */
export function SheetScreen({ store, keeper, listsIn }: SheetScreenProps) {
  const [sheet] = useState(() => createSheet(store, randomId, keeper));
  useEffect(() => sheet.open(), [sheet]);
  useEffect(() => keepSelection(sheet), [sheet]);
  return <OpenSheet sheet={sheet} listsIn={listsIn} />;
}

function OpenSheet({ sheet, listsIn }: { readonly sheet: Sheet; readonly listsIn: ReactNode }) {
  const panel = useSheet(sheet, (state) => state.panel);
  const myName = useMyName();
  const frame = useRef<HTMLDivElement>(null);
  const find = useRef<HTMLInputElement>(null);
  const ribbon = useRef<HTMLElement>(null);
  const toSheet = useCallback(
    () => frame.current?.querySelector<HTMLElement>('[role="grid"]')?.focus({ preventScroll: true }),
    [],
  );
  const jump = useCallback(
    (severity: Severity | undefined, step: 1 | -1) => {
      const cell = nextFinding(sheet, { severity, step });
      if (cell === undefined) sheet.set({ notice: { kind: 'no-finding' } });
      else sheet.select(selectCell(cell));
      toSheet();
    },
    [sheet, toSheet],
  );
  const beside = useCallback(
    (command: BesideCommand['kind']) => {
      const row = sheet.state().selection?.cursor.row;
      const does: Readonly<Record<BesideCommand['kind'], () => void>> = {
        escape: () => sheet.set({ notice: undefined }),
        find: () => find.current?.focus(),
        keys: () => sheet.set({ panel: 'keys' }),
        slots: () => sheet.set({ panel: sheet.state().panel === 'slots' ? undefined : 'slots' }),
        lock: () => lockSelected(sheet, myName || LOCK_WORDS.somebody),
        series: () => showSeries(sheet),
        ribbon: () => ribbon.current?.querySelector<HTMLElement>('button[tabindex="0"], p button')?.focus(),
        'next-finding': () => jump(undefined, 1),
        'previous-finding': () => jump(undefined, -1),
        'clear-finding': () => {
          if (row !== undefined && !showClearing(sheet, row)) sheet.set({ notice: { kind: 'no-finding' } });
        },
      };
      does[command]();
    },
    [sheet, jump, myName],
  );
  useEffect(() => {
    if (document.activeElement === document.body) toSheet();
  }, [toSheet]);
  const close = () => {
    sheet.set({ panel: undefined });
    toSheet();
  };
  const goToFinding = useCallback(
    (finding: Finding) => {
      const cell = cellOfFinding(sheet, finding);
      if (cell) sheet.select(selectCell(cell));
      toSheet();
    },
    [sheet, toSheet],
  );
  const phone = useMedia(PHONE);
  const rows = useSheet(sheet, (state) => state.layout.rowCount);
  const hasRibbon = !phone && rows > 0;
  const goToRow = (row: FixtureId) => {
    const { selection, columns } = sheet.state();
    sheet.select(selectCell({ row, column: selection?.cursor.column ?? columns[0] ?? 'channel' }));
  };
  return (
    <>
      <SheetTools sheet={sheet} find={find} onJump={(severity) => jump(severity, 1)} onLeave={toSheet} />
      <ReaderLine sheet={sheet} />
      <LostLines sheet={sheet} />
      <NoticeLine sheet={sheet} />
      <div ref={frame} className="relative flex min-h-0 flex-1">
        <div className="@container/sheet flex min-h-0 min-w-0 flex-1 flex-col">
          <Rows sheet={sheet} listsIn={listsIn} onBeside={beside} />
        </div>
        <OpenPanel
          sheet={sheet}
          panel={panel}
          onGo={goToFinding}
          onGoTo={(row) => {
            goToRow(row);
            close();
          }}
          onClose={close}
        />
      </div>
      {hasRibbon ? <Ribbon sheet={sheet} frame={ribbon} onGo={goToRow} onLeave={toSheet} /> : null}
      <PreviewDialog sheet={sheet} />
    </>
  );
}
