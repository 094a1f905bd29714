import type { RowDifference } from '#base/table.ts';
import { diffRigs } from '../diff/rig-diff.ts';
import type { Fixture } from '../model/fixture.ts';
import type { Rig } from '../model/rig.ts';
import { compareRowOrder } from '../model/row-order.ts';
import type { Change, ChangePart, ToldCells, ToldValue } from './change.ts';
import { fieldsTold, TOLD_CELLS } from './told-cells.ts';

/** A change, and the row as it was before it, or after it where it came: what it is called by. */
export interface NamedChange {
  readonly change: Change;
  readonly of: { readonly id: string };
}

/** Everything that is unlike in two rigs, cell by cell: units in their order in the sheet first, then the rest part by part. [HI1] [HI2] */
export function changesOf(before: Rig, after: Rig): readonly NamedChange[] {
  const diff = diffRigs(before, after);
  const fixtures = [...diff.fixtures].sort((a, b) => compareRowOrder(rowIn(a), rowIn(b)));
  return [
    ...fixtures.flatMap((row) => ofRow('unit', row, TOLD_CELLS.unit)),
    ...diff.cards.flatMap((row) => ofRow('card', row, TOLD_CELLS.card)),
    ...diff.modes.flatMap((row) => ofRow('mode', row, TOLD_CELLS.mode)),
    ...diff.positions.flatMap((row) => ofRow('position', row, TOLD_CELLS.position)),
    ...diff.universes.flatMap((row) => ofRow('universe', row, TOLD_CELLS.universe)),
    ...diff.notes.flatMap((row) => ofRow('note', row, TOLD_CELLS.note)),
    ...diff.wanted.flatMap((row) => ofRow('wanted', row, TOLD_CELLS.wanted)),
    ...diff.signatures.flatMap((row) => ofRow('signature', row, TOLD_CELLS.signature)),
  ];
}

// A row that differs is in one of the two at least.
const rowIn = ({ before, after }: RowDifference<Fixture>) => (before ?? after) as Fixture;

function ofRow<Row extends { readonly id: string }>(
  part: ChangePart,
  { id, before, after }: RowDifference<Row>,
  cellsOf: (row: Row) => ToldCells,
): readonly NamedChange[] {
  const of = before ?? after;
  if (of === undefined) return [];
  const told = (change: Change): NamedChange => ({ change, of });
  if (before === undefined || after === undefined) {
    const cells = (row: Row | undefined) => (row === undefined ? null : cellsOf(row));
    return [told({ part, row: id, field: null, before: cells(before), after: cells(after) })];
  }
  const [was, is] = [cellsOf(before), cellsOf(after)];
  return fieldsTold(was, is).flatMap((field) => {
    const change = { part, row: id, field, before: was[field] ?? null, after: is[field] ?? null };
    return sameValue(change.before, change.after) ? [] : [told(change)];
  });
}

const sameValue = (a: ToldValue, b: ToldValue): boolean => Object.is(a, b) || JSON.stringify(a) === JSON.stringify(b);
