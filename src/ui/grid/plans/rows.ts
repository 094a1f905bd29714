import type { MakeId } from '#base/random-id.ts';
import { getRow, rowsOf } from '#base/table.ts';
import type { Edit, Plan } from '#engine/model/edit.ts';
import type { Cells, Fixture } from '#engine/model/fixture.ts';
import { type FixtureId, fixtureId } from '#engine/model/ids.ts';
import { cellsOf } from '#engine/model/read-fixture.ts';
import type { Rig } from '#engine/model/rig.ts';
import { planOf } from './write-cells.ts';

/** A plan that makes rows, and which they are. */
export interface NewRows {
  readonly plan: Plan;
  readonly rows: readonly FixtureId[];
}

/** A new row right after another, at the same position; after all others when `after` is not given. */
export function insertRow(rig: Rig, after: FixtureId | undefined, makeId: MakeId): NewRows {
  const beside = after === undefined ? undefined : getRow(rig.fixtures, after);
  const position = beside === undefined || beside.position === '' ? {} : { position: beside.position };
  return addRows('insert', [position], ordersAfter(rig, beside, 1), makeId);
}

/**
 * Copies of rows, after the last of them. Address and channel are left empty: two units at one address act as one, and
 * that is for a person to say.
 */
export function duplicateRows(rig: Rig, rows: readonly FixtureId[], makeId: MakeId): NewRows | undefined {
  const fixtures = fixturesOf(rig, rows);
  const last = fixtures.reduce<Fixture | undefined>(
    (a, b) => (a === undefined || b.order >= a.order ? b : a),
    undefined,
  );
  if (last === undefined) return undefined;
  const copies = fixtures.map((fixture) => {
    const { channel: _c, address: _1, address2: _2, address3: _3, address4: _4, ...kept } = cellsOf(fixture);
    return kept;
  });
  return addRows('duplicate', copies, ordersAfter(rig, last, copies.length), makeId);
}

/** Takes rows out; undefined when none of them is there. */
export function removeRows(rig: Rig, rows: readonly FixtureId[]): Plan | undefined {
  const edits = fixturesOf(rig, rows).map(({ id }): Edit => ({ kind: 'remove-fixture', fixture: id }));
  return planOf('remove', edits);
}

function fixturesOf(rig: Rig, rows: readonly FixtureId[]): readonly Fixture[] {
  return rows.flatMap((row) => getRow(rig.fixtures, row) ?? []);
}

function addRows(
  name: 'insert' | 'duplicate',
  cells: readonly Cells[],
  orders: readonly number[],
  makeId: MakeId,
): NewRows {
  const rows = cells.map(() => fixtureId(makeId()));
  const edits = rows.map((fixture, n): Edit => {
    return { kind: 'add-fixture', fixture, cells: { ...cells[n], order: orders[n] ?? 0 } };
  });
  return { plan: { name, edits }, rows };
}

/** `count` ascending orders that stand between a row and the next one as the rows were put; after all without a row. */
export function ordersAfter(rig: Rig, row: Fixture | undefined, count: number): readonly number[] {
  const from = row?.order ?? lastOrder(rig);
  let next = Infinity;
  for (const { order } of rowsOf(rig.fixtures)) if (order > from && order < next) next = order;
  const step = next === Infinity ? 1 : (next - from) / (count + 1);
  return Array.from({ length: count }, (_, n) => from + step * (n + 1));
}

function lastOrder(rig: Rig): number {
  let last = 0;
  for (const { order } of rowsOf(rig.fixtures)) last = Math.max(last, order);
  return last;
}
