import { getRow } from '#base/table.ts';
import { chosenUnits, keepChosen } from '../live/chosen-units.ts';
import { selectCell, selectedRows, stretchTo } from './selection.ts';
import type { Sheet } from './sheet.ts';

/** Selects what was chosen on another page of the rig; the answer keeps what is selected when the sheet is left. */
export function keepSelection(sheet: Sheet): () => void {
  const { store } = sheet;
  const units = chosenUnits(store).filter((id) => getRow(store.rig().fixtures, id) !== undefined);
  const column = sheet.state().selection?.cursor.column;
  const [first] = units;
  const last = units.at(-1);
  if (first !== undefined && last !== undefined && column !== undefined) {
    const one = selectCell({ row: first, column });
    const all = stretchTo(one, { row: last, column });
    // A selection is a rectangle: what does not stand together in the sheet is not selected together.
    sheet.select(selectedRows(sheet.ground(), all).length === units.length ? all : one);
  }
  return () => {
    const { selection } = sheet.state();
    if (selection !== undefined) keepChosen(store, selectedRows(sheet.ground(), selection));
  };
}
