import { useEffect } from 'react';
import { getRow } from '#base/table.ts';
import { selectCell } from '../grid/selection.ts';
import type { Sheet } from '../grid/sheet.ts';
import { selectedBlock } from '../grid/sheet-actions.ts';
import { chosenUnits } from '../live/chosen-units.ts';
import { lineOf } from '../live/rows/lines.ts';

/** Goes to the unit that was chosen on another page, and tells the other pages what is selected here. */
export function useSharedChoice(sheet: Sheet): void {
  useEffect(() => {
    const chosen = chosenUnits(sheet.store);
    const [first] = chosen.ids();
    const { columns, selection } = sheet.state();
    const isHere = first !== undefined && getRow(sheet.store.rig().fixtures, first) !== undefined;
    if (isHere && lineOf(sheet.ground().order, first) >= 0) {
      sheet.select(selectCell({ row: first, column: selection?.cursor.column ?? columns[0] ?? 'channel' }));
    }
    let told = sheet.state().selection;
    return sheet.subscribe(() => {
      const now = sheet.state().selection;
      if (now === told) return;
      told = now;
      chosen.choose(selectedBlock(sheet).rows);
    });
  }, [sheet]);
}
