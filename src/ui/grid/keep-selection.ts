import { getRow } from '#base/table.ts';
import type { FixtureId } from '#engine/model/ids.ts';
import { chosenUnits } from '../live/chosen-units.ts';
import { lineOf } from '../live/rows/lines.ts';
import { selectCell, selectedRows, stretchTo } from './selection.ts';
import type { Sheet } from './sheet.ts';

/** Selects what was chosen on another page of the rig, and tells the other pages what is selected from then on; the answer stops that. */
export function keepSelection(sheet: Sheet): () => void {
  const chosen = chosenUnits(sheet.store);
  selectUnits(sheet, chosen.ids());
  let told = sheet.state().selection;
  return sheet.subscribe(() => {
    const { selection } = sheet.state();
    if (selection === told) return;
    told = selection;
    if (selection !== undefined) chosen.choose(selectedRows(sheet.ground(), selection));
  });
}

function selectUnits(sheet: Sheet, ids: readonly FixtureId[]): void {
  const { selection, columns } = sheet.state();
  const column = selection?.cursor.column ?? columns[0];
  const rig = sheet.store.rig();
  const units = ids.filter((id) => getRow(rig.fixtures, id) !== undefined && lineOf(sheet.ground().order, id) >= 0);
  const [first] = units;
  const last = units.at(-1);
  if (first === undefined || last === undefined || column === undefined) return;
  const one = selectCell({ row: first, column });
  const all = stretchTo(one, { row: last, column });
  // A selection is a rectangle: what does not stand together in the sheet is not selected together.
  sheet.select(selectedRows(sheet.ground(), all).length === units.length ? all : one);
}
