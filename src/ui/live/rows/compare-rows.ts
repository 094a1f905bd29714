import type { CellValue } from '#engine/model/field.ts';
import { footprintsOf } from '#engine/model/find-mode.ts';
import type { Fixture } from '#engine/model/fixture.ts';
import { compareNatural } from '#engine/model/natural-order.ts';
import { cellOf } from '#engine/model/read-fixture.ts';
import type { Rig } from '#engine/model/rig.ts';
import { compareRowOrder } from '#engine/model/row-order.ts';
import type { ColumnId } from './column.ts';
import type { Sort } from './view.ts';

export type CompareRows = (a: Fixture, b: Fixture) => number;

/**
 * A total order of rows: by the sorted column, then in the order the rows were put, then by id. Numbers come before text,
 * empty cells last whichever way the column is sorted; text is in natural order (2, 4, 4A, 10).
 */
export function compareRows(rig: Rig, sort: Sort | null): CompareRows {
  if (sort === null) return compareRowOrder;
  const { column } = sort;
  const sign = sort.direction === 'ascending' ? 1 : -1;
  return (a, b) => compareCells(sortKey(rig, a, column), sortKey(rig, b, column), sign) || compareRowOrder(a, b);
}

function sortKey(rig: Rig, fixture: Fixture, column: ColumnId): CellValue {
  return column === 'footprint' ? footprintOf(rig, fixture) : cellOf(fixture, column);
}

/** All slots of a fixture, over its breaks. */
export function footprintOf(rig: Rig, fixture: Fixture): number {
  let sum = 0;
  for (const slots of footprintsOf(rig, fixture)) sum += slots;
  return sum;
}

function compareCells(a: CellValue, b: CellValue, sign: number): number {
  if (a === null || b === null) return (a === null ? 1 : 0) - (b === null ? 1 : 0);
  if (typeof a === 'number') return typeof b === 'number' ? sign * (a - b) : -1;
  return typeof b === 'number' ? 1 : sign * compareNatural(a, b);
}
