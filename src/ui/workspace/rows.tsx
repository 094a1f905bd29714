import { type ReactNode, useSyncExternalStore } from 'react';
import type { BesideCommand } from '../grid/commands.ts';
import { Grid } from '../grid/grid.tsx';
import type { Sheet } from '../grid/sheet.ts';
import { useSheet } from '../grid/use-sheet.ts';
import { isFiltered } from '../live/rows/view.ts';
import { EmptySheet } from './empty-sheet.tsx';
import { MarginCell } from './margin-cell.tsx';
import { PhoneSheet } from './phone/phone-sheet.tsx';
import { RowFindings } from './row-findings.tsx';
import { PHONE, useMedia } from './use-media.ts';

export interface RowsProps {
  readonly sheet: Sheet;
  readonly listsIn: ReactNode;
  readonly onBeside: (command: BesideCommand['kind']) => void;
}

/** The rows as this screen shows them: a grid, a list under a thumb, or a word on why there are none. */
export function Rows({ sheet, listsIn, onBeside }: RowsProps) {
  const { store } = sheet;
  const rows = useSheet(sheet, (state) => state.layout.rowCount);
  const filter = useSheet(sheet, (state) => state.view.filter);
  const writable = useSyncExternalStore(store.subscribeLink, store.canEdit);
  const arrived = useSyncExternalStore(store.subscribeLink, store.hasArrived);
  const phone = useMedia(PHONE);
  if (rows === 0) {
    const state = isFiltered(filter) ? 'filtered' : !arrived ? 'arriving' : writable ? 'empty' : 'reader';
    return <EmptySheet sheet={sheet} state={state} listsIn={listsIn} />;
  }
  if (phone) return <PhoneSheet sheet={sheet} />;
  return (
    <>
      <div className="min-h-0 flex-1">
        <Grid sheet={sheet} margin={MarginCell} onBeside={onBeside} access={writable ? 'writable' : 'readonly'} />
      </div>
      <div className="contents @min-[70rem]/sheet:hidden">
        <RowFindings sheet={sheet} />
      </div>
    </>
  );
}
