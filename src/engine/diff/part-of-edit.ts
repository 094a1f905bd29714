import { getRow, type Table } from '#base/table.ts';
import { unreachable } from '#base/unreachable.ts';
import { cardId } from '../model/card.ts';
import type { Edit } from '../model/edit.ts';
import { foldName, modeId, positionId } from '../model/ids.ts';
import { cellOf, cellsOf } from '../model/read-fixture.ts';
import type { Rig } from '../model/rig.ts';

/** What a rig says where an edit would write, as text: equal texts say the same. Undefined where there is nothing. */
export function partOfEdit(rig: Rig, edit: Edit): string | undefined {
  switch (edit.kind) {
    case 'add-fixture':
    case 'remove-fixture': {
      const fixture = getRow(rig.fixtures, edit.fixture);
      return fixture === undefined ? undefined : JSON.stringify(cellsOf(fixture));
    }
    case 'set-cell': {
      const fixture = getRow(rig.fixtures, edit.fixture);
      return fixture === undefined ? undefined : JSON.stringify(cellOf(fixture, edit.field));
    }
    case 'set-card':
      return JSON.stringify(getRow(rig.cards, cardId(edit.card, edit.key))?.cells[edit.field] ?? null);
    case 'set-mode':
    case 'remove-mode':
      return rowText(rig.modes, modeId(edit.type, edit.mode));
    case 'set-position':
    case 'remove-position':
      return rowText(rig.positions, positionId(edit.name));
    case 'set-universe':
      return rowText(rig.universes, String(edit.universe));
    case 'set-note':
    case 'remove-note':
      return rowText(rig.notes, edit.note);
    case 'set-wanted':
      return rowText(rig.wanted, foldName(edit.type));
    case 'set-signature':
      return rowText(rig.signatures, edit.hazard);
    default:
      return unreachable(edit);
  }
}

/** Plain data whose properties come in one order always, as readers make it. */
function rowText<Row extends { readonly id: string }>(table: Table<Row>, id: string): string | undefined {
  const row = getRow(table, id);
  return row === undefined ? undefined : JSON.stringify(row);
}
