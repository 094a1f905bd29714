import { rowsOf } from '#base/table.ts';
import type { Change, ChangePart, ToldCells, ToldValue } from '#engine/history/change.ts';
import { TOLD_CELLS } from '#engine/history/told-cells.ts';
import { EMPTY_RIG, type Rig } from '#engine/model/rig.ts';

/** What a history says of every row: a second book, kept by changes alone. */
export interface ToldLedger {
  take(change: Change): void;
  /** Row by row, by part and id, cells by their names. */
  all(): Readonly<Record<string, ToldCells>>;
}

/** The book of a rig as it is; of the empty one unless another is given. */
export function toldLedger(rig: Rig = EMPTY_RIG): ToldLedger {
  const rows = new Map<string, Record<string, ToldValue>>();
  const enter = (part: ChangePart, id: string, cells: ToldCells) => rows.set(`${part} ${id}`, { ...cells });
  for (const row of rowsOf(rig.fixtures)) enter('unit', row.id, TOLD_CELLS.unit(row));
  for (const row of rowsOf(rig.cards)) enter('card', row.id, TOLD_CELLS.card(row));
  for (const row of rowsOf(rig.modes)) enter('mode', row.id, TOLD_CELLS.mode(row));
  for (const row of rowsOf(rig.positions)) enter('position', row.id, TOLD_CELLS.position(row));
  for (const row of rowsOf(rig.universes)) enter('universe', row.id, TOLD_CELLS.universe(row));
  for (const row of rowsOf(rig.notes)) enter('note', row.id, TOLD_CELLS.note(row));
  for (const row of rowsOf(rig.wanted)) enter('wanted', row.id, TOLD_CELLS.wanted(row));
  for (const row of rowsOf(rig.signatures)) enter('signature', row.id, TOLD_CELLS.signature(row));
  return {
    take({ part, row, field, after }) {
      if (field === null) {
        if (after === null) rows.delete(`${part} ${row}`);
        else enter(part, row, after as ToldCells);
        return;
      }
      const cells = rows.get(`${part} ${row}`) ?? {};
      if (after === null) delete cells[field];
      else cells[field] = after as ToldValue;
    },
    all: () => Object.fromEntries([...rows].sort(([a], [b]) => (a < b ? -1 : 1))),
  };
}
