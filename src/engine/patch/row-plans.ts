import type { MakeId } from '#base/random-id.ts';
import { ok, type Result, refuse } from '#base/result.ts';
import { getRow, rowsOf } from '#base/table.ts';
import { createOccupancy } from '../address/occupancy-index.ts';
import type { Edit, Plan } from '../model/edit.ts';
import { ADDRESS_FIELDS } from '../model/field.ts';
import type { Cells, Fixture } from '../model/fixture.ts';
import { type FixtureId, fixtureId, foldName, positionId } from '../model/ids.ts';
import { cellsOf, readFixture } from '../model/read-fixture.ts';
import type { Rig } from '../model/rig.ts';
import { compareRowOrder, rowsInOrder } from '../model/row-order.ts';
import { chosen, planOf } from './chosen.ts';
import { unitBeside } from './next-unit.ts';
import { placeBeside } from './place-plan.ts';
import type { PlanRefusal } from './plan-refusal.ts';
import { Room } from './room.ts';

/** The most rows one plan adds. */
export const ROWS_AT_ONCE = 5000;

export interface InsertRequest {
  /** The row they go below; null puts them above all others. */
  readonly after: FixtureId | null;
  /** What each new row holds; its `order` is set here. */
  readonly rows: readonly Cells[];
}

/** Puts new rows below another. The others keep their place. [PL9] */
export function insertPlan(rig: Rig, { after, rows }: InsertRequest, makeId: MakeId): Result<Plan, PlanRefusal> {
  if (after !== null && getRow(rig.fixtures, after) === undefined) {
    return refuse({ code: 'no-such-fixture', fixture: after });
  }
  if (rows.length > ROWS_AT_ONCE) return refuse({ code: 'bad-number', value: rows.length });
  return planOf(rig, 'insert', addRows(rig, after, rows, makeId));
}

/** Takes rows out. [PL10] */
export function removePlan(rig: Rig, ids: readonly FixtureId[]): Result<Plan, PlanRefusal> {
  const fixtures = chosen(rig, ids);
  if (!fixtures.ok) return fixtures;
  return planOf(
    rig,
    'remove',
    fixtures.value.map(({ id }) => ({ kind: 'remove-fixture', fixture: id })),
  );
}

export interface DuplicateRequest {
  readonly fixtures: readonly FixtureId[];
  readonly copies: number;
  /** Copies start without an address, or get the next free ones after the unit they are made of. */
  readonly addresses: 'none' | 'next-free';
}

/**
 * Adds copies below the last of the chosen rows. A copy keeps position, type, mode, purpose and colour, gets the unit
 * number beside the one it is made of, and has no channel, circuit or notes: those belong to one unit. [PL11]
 */
export function duplicatePlan(
  rig: Rig,
  { fixtures: ids, copies, addresses }: DuplicateRequest,
  makeId: MakeId,
): Result<Plan, PlanRefusal> {
  const fixtures = chosen(rig, ids);
  if (!fixtures.ok) return fixtures;
  const count = copies * fixtures.value.length;
  if (!Number.isInteger(copies) || copies < 1 || count > ROWS_AT_ONCE)
    return refuse({ code: 'bad-number', value: copies });
  const sources = [...fixtures.value].sort(compareRowOrder);
  const units = new TakenUnits(rig);
  const rows = Array.from({ length: copies }, () =>
    sources.map((fixture) => ({ fixture, cells: copyOf(fixture, units) })),
  );
  const placed = addresses === 'none' ? ok(rows.flat().map(({ cells }) => cells)) : placeCopies(rig, rows.flat());
  if (!placed.ok) return placed;
  return planOf(rig, 'duplicate', addRows(rig, sources[sources.length - 1]?.id ?? null, placed.value, makeId));
}

function copyOf(fixture: Fixture, units: TakenUnits): Cells {
  const { position, type, mode, purpose, colour } = cellsOf(fixture);
  const unit = units.takeBeside(fixture);
  return Object.fromEntries(
    Object.entries({ position, unit, type, mode, purpose, colour }).filter(
      ([, value]) => value !== undefined && value !== '',
    ),
  );
}

function placeCopies(
  rig: Rig,
  copies: readonly { readonly fixture: Fixture; readonly cells: Cells }[],
): Result<readonly Cells[], PlanRefusal> {
  const room = new Room(createOccupancy(rig), () => false);
  const rows: Cells[] = [];
  for (const { fixture, cells } of copies) {
    const placed = placeBeside(room, rig, fixture);
    if (!placed.ok) return placed;
    const starts = placed.value.addresses.flatMap((start, part) => {
      const field = ADDRESS_FIELDS[part];
      return start === null || field === undefined ? [] : [[field, start] as const];
    });
    rows.push({ ...cells, ...Object.fromEntries(starts) });
  }
  return ok(rows);
}

/** The unit numbers in use, folded, by position: those of the rig, and those with what a plan has given out so far. */
class TakenUnits {
  readonly #positions = new Map<string, { readonly before: Set<string>; readonly now: Set<string> }>();

  constructor(rig: Rig) {
    for (const { position, unit } of rowsOf(rig.fixtures)) {
      const { before, now } = this.#at(position);
      before.add(foldName(unit));
      now.add(foldName(unit));
    }
  }

  takeBeside(fixture: Fixture): string {
    const { before, now } = this.#at(fixture.position);
    const unit = unitBeside(fixture.unit, before, now);
    now.add(foldName(unit));
    return unit;
  }

  #at(position: string) {
    const key = positionId(position);
    const known = this.#positions.get(key);
    if (known !== undefined) return known;
    const taken = { before: new Set<string>(), now: new Set<string>() };
    this.#positions.set(key, taken);
    return taken;
  }
}

function addRows(rig: Rig, after: FixtureId | null, rows: readonly Cells[], makeId: MakeId): Edit[] {
  const { orders, shifts } = ordersBelow(rowsInOrder(rig), after, rows.length);
  const added = rows.map((cells, at): Edit => {
    const id = fixtureId(makeId());
    // Read once, so that what is written is what a fixture can hold.
    return { kind: 'add-fixture', fixture: id, cells: { ...cellsOf(readFixture(id, cells)), order: orders[at] ?? 0 } };
  });
  return [...shifts, ...added];
}

/** `count` orders between a row and the next; where they do not fit in between, the rows below are moved on. */
function ordersBelow(
  rows: readonly Fixture[],
  after: FixtureId | null,
  count: number,
): { readonly orders: readonly number[]; readonly shifts: readonly Edit[] } {
  const at = after === null ? -1 : rows.findIndex((row) => row.id === after);
  const below = rows[at + 1]?.order;
  const above = rows[at]?.order ?? (below ?? 0) - count - 1;
  const step = below === undefined ? 1 : Math.min(1, (below - above) / (count + 1));
  const orders = Array.from({ length: count }, (_, i) => above + step * (i + 1));
  if (isAscending([above, ...orders, ...(below === undefined ? [] : [below])])) return { orders, shifts: [] };
  return spread(rows, at, above, count);
}

const isAscending = (orders: readonly number[]) =>
  orders.every((order, i) => i === 0 || (orders[i - 1] as number) < order);

function spread(rows: readonly Fixture[], at: number, above: number, count: number) {
  const orders = Array.from({ length: count }, (_, i) => above + i + 1);
  const shifts: Edit[] = [];
  let reached = above + count;
  for (const row of rows.slice(at + 1)) {
    if (row.order > reached) break;
    reached += 1;
    shifts.push({ kind: 'set-cell', fixture: row.id, field: 'order', value: reached });
  }
  return { orders, shifts };
}
