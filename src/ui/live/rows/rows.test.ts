import { describe, expect, it } from 'vitest';
import { type Rng, seededRng } from '#base/rng.ts';
import { changeRows, differingRows, getRow, rowsOf } from '#base/table.ts';
import { absolute, universeOf } from '#engine/model/address.ts';
import { applyEdits } from '#engine/model/apply-edits.ts';
import type { Edit } from '#engine/model/edit.ts';
import { type FixtureId, fixtureId } from '#engine/model/ids.ts';
import { readFixture } from '#engine/model/read-fixture.ts';
import { EMPTY_RIG, type Rig } from '#engine/model/rig.ts';
import { advanceOrder } from './advance-order.ts';
import type { ColumnId } from './column.ts';
import { lineAt, lineCount, lineOf, rowNear, rowsBetween } from './lines.ts';
import { rowOrder } from './row-order.ts';
import type { View } from './view.ts';

const POSITIONS = ['LX 1', 'lx 1', 'LX 2', 'LX 10', 'Boom 2', ''];
const UNITS = ['2', '4', '4A', '10', '', '01'];
const COLUMNS: readonly ColumnId[] = ['channel', 'position', 'unit', 'address', 'mode', 'footprint', 'purpose'];

function randomEdit(rng: Rng, ids: readonly FixtureId[]): Edit {
  const fixture = rng.pick(ids);
  switch (rng.int(12)) {
    case 0:
      return { kind: 'remove-fixture', fixture };
    case 1:
    case 2:
      return { kind: 'add-fixture', fixture, cells: { order: rng.int(50), position: rng.pick(POSITIONS) } };
    case 3:
      return { kind: 'set-position', name: rng.pick(POSITIONS.slice(0, 5)), order: rng.int(4) };
    case 4:
      return { kind: 'set-mode', type: 'Spot', mode: rng.pick(['A', 'B']), footprints: [1 + rng.int(30)] };
    case 5:
      return {
        kind: 'set-universe',
        universe: universeOf(absolute(1 + rng.int(3), 1)),
        label: rng.pick(['', 'Front', 'Floor']),
      };
    case 6:
      return { kind: 'set-cell', fixture, field: 'position', value: rng.pick(POSITIONS) || null };
    case 7:
      return { kind: 'set-cell', fixture, field: 'unit', value: rng.pick(UNITS) || null };
    case 8:
      return { kind: 'set-cell', fixture, field: 'channel', value: rng.pick([1, 2, 30, 'odd', null]) };
    case 9:
      return { kind: 'set-cell', fixture, field: 'address', value: rng.pick([null, 'x', absolute(2, 1 + rng.int(9))]) };
    case 10:
      return { kind: 'set-cell', fixture, field: 'mode', value: rng.pick(['A', 'B', 'C']) };
    default:
      return { kind: 'set-cell', fixture, field: 'type', value: rng.pick(['Spot', 'Wash']) };
  }
}

const randomView = (rng: Rng): View => ({
  grouping: rng.pick(['none', 'position', 'universe'] as const),
  sort: rng.int(4) === 0 ? null : { column: rng.pick(COLUMNS), direction: rng.pick(['ascending', 'descending']) },
  filter: {
    column: rng.pick(['any', 'position', 'mode']),
    text: rng.pick(['', '', 'l', 'b']),
    flagged: rng.int(3) === 0,
  },
});

const differences = (before: Rig, after: Rig) => differingRows(before.fixtures, after.fixtures);

describe('row order', () => {
  it('kept up change by change equals the order from scratch, whatever the view', () => {
    for (let seed = 1; seed <= 60; seed++) {
      const rng = seededRng(seed);
      const view = randomView(rng);
      const ids = Array.from({ length: 24 }, (_, n) => fixtureId(`f${n}`));
      let rig = EMPTY_RIG;
      let flagged = new Set<FixtureId>();
      let order = rowOrder(rig, view, (id) => flagged.has(id));
      for (let step = 0; step < 120; step++) {
        const next = applyEdits(
          rig,
          Array.from({ length: 1 + rng.int(4) }, () => randomEdit(rng, ids)),
        );
        const was = flagged;
        const is = rng.int(3) === 0 ? new Set(ids.filter(() => rng.int(2) === 0)) : was;
        const reflagged = ids.filter((id) => was.has(id) !== is.has(id));
        order = advanceOrder(order, next, differences(rig, next), {
          reflagged,
          wasFlagged: (id) => was.has(id),
          isFlagged: (id) => is.has(id),
        });
        expect(order, `seed ${seed}, step ${step}`).toEqual(rowOrder(next, view, (id) => is.has(id)));
        rig = next;
        flagged = is;
      }
    }
  });

  it('keeps the same layout when an edit moves no row', () => {
    const rig = applyEdits(EMPTY_RIG, [
      { kind: 'add-fixture', fixture: fixtureId('a'), cells: { order: 1, position: 'LX 1' } },
      { kind: 'add-fixture', fixture: fixtureId('b'), cells: { order: 2, position: 'LX 1' } },
    ]);
    const view: View = { grouping: 'position', sort: null, filter: { column: 'any', text: '', flagged: false } };
    const order = rowOrder(rig, view, () => false);
    const row = readFixture(fixtureId('a'), { order: 1, position: 'LX 1', purpose: 'Special' });
    const next = { ...rig, fixtures: changeRows(rig.fixtures, [{ id: row.id, row }]) };
    const flags = { reflagged: [], wasFlagged: () => false, isFlagged: () => false };
    expect(advanceOrder(order, next, differences(rig, next), flags).layout).toBe(order.layout);
  });

  it('sorts units in natural order, empty ones last both ways (natural order: common practice)', () => {
    const cells = ['10', '4A', '', '2', '4'];
    const rig = applyEdits(
      EMPTY_RIG,
      cells.map((unit, n) => ({
        kind: 'add-fixture' as const,
        fixture: fixtureId(`f${n}`),
        cells: { unit: unit || null, order: n },
      })),
    );
    const units = (direction: 'ascending' | 'descending') => {
      const view: View = { grouping: 'none', sort: { column: 'unit', direction }, filter: NO_FILTER };
      const ids = rowOrder(rig, view, () => false).layout.groups.flatMap((group) => group.ids);
      return ids.map((id) => getRow(rig.fixtures, id)?.unit).join(' ');
    };
    expect(units('ascending')).toBe('2 4 4A 10 ');
    expect(units('descending')).toBe('10 4A 4 2 ');
  });
});

const NO_FILTER = { column: 'any', text: '', flagged: false } as const;

describe('lines', () => {
  it('lineAt and lineOf are each other’s inverse, and headings stand before their rows', () => {
    const rng = seededRng(11);
    const ids = Array.from({ length: 40 }, (_, n) => fixtureId(`f${n}`));
    const edits = Array.from({ length: 300 }, () => randomEdit(rng, ids));
    const rig = applyEdits(EMPTY_RIG, edits);
    for (const grouping of ['none', 'position', 'universe'] as const) {
      const order = rowOrder(rig, { grouping, sort: null, filter: NO_FILTER }, () => false);
      const seen: FixtureId[] = [];
      for (let index = 0; index < lineCount(order.layout); index++) {
        const line = lineAt(order.layout, index);
        if (line?.kind !== 'row') continue;
        expect(lineOf(order, line.id)).toBe(index);
        seen.push(line.id);
      }
      expect(seen).toHaveLength(rig.fixtures.size);
      expect(rowsBetween(order.layout, lineCount(order.layout), 0)).toEqual(seen);
      expect(rowNear(order.layout, -5, 1)).toBe(seen[0]);
      expect(rowNear(order.layout, 1e9, 1)).toBe(seen.at(-1));
      expect(lineAt(order.layout, lineCount(order.layout))).toBeUndefined();
      expect(lineAt(order.layout, -1)).toBeUndefined();
    }
    expect([...rowsOf(rig.fixtures)].length).toBeGreaterThan(10);
  });
});
