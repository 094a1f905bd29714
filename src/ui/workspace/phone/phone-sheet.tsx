import { useVirtualizer } from '@tanstack/react-virtual';
import { useCallback, useEffect, useRef, useState } from 'react';
import { getRow } from '#base/table.ts';
import type { FixtureId } from '#engine/model/ids.ts';
import { GroupName } from '../../grid/group-line.tsx';
import { selectCell } from '../../grid/selection.ts';
import type { Sheet } from '../../grid/sheet.ts';
import { useSheet } from '../../grid/use-sheet.ts';
import { lineAt, lineCount, lineOf } from '../../live/rows/lines.ts';
import { PhoneCard } from './phone-card.tsx';
import { PhoneUnit } from './phone-unit.tsx';

const CARD = 108;
const HEADING = 48;

/** The sheet under a thumb: a list of units, and one unit at a time with its address in large digits. */
export function PhoneSheet({ sheet }: { readonly sheet: Sheet }) {
  const [open, setOpen] = useState(false);
  const row = useSheet(sheet, (state) => state.selection?.cursor.row);
  useSentTo(sheet, row, () => setOpen(true));
  const show = (id: FixtureId) => {
    sheet.select(selectCell({ row: id, column: 'address' }));
    setOpen(true);
  };
  if (open && row !== undefined) return <PhoneUnit sheet={sheet} id={row} onBack={() => setOpen(false)} />;
  return <PhoneList sheet={sheet} onShow={show} />;
}

/** Opens the unit that a find or a jump to a finding goes to; not the one next to a unit that was removed. */
function useSentTo(sheet: Sheet, row: FixtureId | undefined, open: () => void): void {
  const before = useRef(row);
  useEffect(() => {
    const was = before.current;
    before.current = row;
    if (was === row || was === undefined || row === undefined) return;
    if (getRow(sheet.store.rig().fixtures, was) !== undefined) open();
  });
}

function PhoneList({ sheet, onShow }: { readonly sheet: Sheet; readonly onShow: (id: FixtureId) => void }) {
  const layout = useSheet(sheet, (state) => state.layout);
  const row = useSheet(sheet, (state) => state.selection?.cursor.row);
  const scroller = useRef<HTMLDivElement>(null);
  const heightOf = useCallback(
    (index: number) => (lineAt(layout, index)?.kind === 'heading' ? HEADING : CARD),
    [layout],
  );
  const keyOf = useCallback((index: number) => (heightOf === undefined ? -1 : index), [heightOf]);
  const virtualizer = useVirtualizer({
    count: lineCount(layout),
    getScrollElement: () => scroller.current,
    estimateSize: heightOf,
    getItemKey: keyOf,
    overscan: 4,
    initialOffset: () => (row === undefined ? 0 : Math.max(0, lineOf(sheet.ground().order, row) - 1) * CARD),
  });
  return (
    <div ref={scroller} className="h-full overflow-y-auto px-4">
      <ul className="relative" style={{ height: virtualizer.getTotalSize() }}>
        {virtualizer.getVirtualItems().map(({ index, start, size }) => {
          const line = lineAt(layout, index);
          if (line === undefined) return null;
          return (
            <li
              key={line.kind === 'row' ? line.id : `g${line.group.key}`}
              className="absolute inset-x-0"
              style={{ top: start, height: size }}
            >
              {line.kind === 'heading' ? (
                <GroupName group={line.group} />
              ) : (
                <PhoneCard sheet={sheet} id={line.id} onShow={onShow} />
              )}
            </li>
          );
        })}
      </ul>
    </div>
  );
}
