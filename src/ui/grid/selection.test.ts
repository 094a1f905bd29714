import { describe, expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import { applyEdits } from '#engine/model/apply-edits.ts';
import { fixtureId } from '#engine/model/ids.ts';
import { EMPTY_RIG } from '#engine/model/rig.ts';
import { lineAt, lineCount, lineOf } from '../live/rows/lines.ts';
import { rowOrder } from '../live/rows/row-order.ts';
import { EVERYTHING, type Grouping } from '../live/rows/view.ts';
import {
  cellAfter,
  type Ground,
  mendSelection,
  moveSelection,
  selectAll,
  selectCell,
  selectedColumns,
  selectedRows,
  spanOf,
} from './selection.ts';

const COLUMNS = ['channel', 'unit', 'address'] as const;

function ground(rows: number, grouping: Grouping): Ground {
  const edits = Array.from({ length: rows }, (_, n) => ({
    kind: 'add-fixture' as const,
    fixture: fixtureId(`f${n}`),
    cells: { order: n, position: `LX ${n % 4}` },
  }));
  const order = rowOrder(applyEdits(EMPTY_RIG, edits), { grouping, sort: null, filter: EVERYTHING }, () => false);
  return { order, columns: COLUMNS };
}

const at = (row: string, column: (typeof COLUMNS)[number]) => selectCell({ row: fixtureId(row), column });

describe('selection', () => {
  it('stays on rows and columns of the sheet whatever the motion', () => {
    const rng = seededRng(3);
    for (const grouping of ['none', 'position'] as const) {
      const sheet = ground(30, grouping);
      let selection = at('f0', 'unit');
      for (let step = 0; step < 2000; step++) {
        const motion = {
          lines: rng.pick([-Infinity, -12, -1, 0, 1, 12, Infinity]),
          columns: rng.pick([-Infinity, -1, 0, 1, Infinity]),
          how: rng.pick(['go', 'stretch'] as const),
        };
        selection = moveSelection(sheet, selection, motion);
        expect(spanOf(sheet, selection)).toBeDefined();
        expect(selectedRows(sheet, selection)).toContain(selection.cursor.row);
      }
    }
  });

  it('steps over a heading, and Tab reads the sheet from its first cell to its last', () => {
    const sheet = ground(8, 'position');
    expect(moveSelection(sheet, at('f4', 'unit'), { lines: 1, columns: 0, how: 'go' })).toEqual(at('f1', 'unit'));
    let cell = moveSelection(sheet, at('f3', 'unit'), { lines: -Infinity, columns: -Infinity, how: 'go' }).cursor;
    const read = [cell];
    for (let next = cellAfter(sheet, cell, 1); next; next = cellAfter(sheet, cell, 1)) {
      cell = next;
      read.push(cell);
    }
    expect(read).toHaveLength(8 * COLUMNS.length);
    for (let i = read.length - 1; i > 0; i--) expect(cellAfter(sheet, read[i] ?? cell, -1)).toEqual(read[i - 1]);
    expect(cellAfter(sheet, read[0] ?? cell, -1)).toBeUndefined();
  });

  it('selects all, with headings left out of the rows', () => {
    const sheet = ground(8, 'position');
    const all = selectAll(sheet, at('f3', 'unit'));
    expect(selectedRows(sheet, all)).toHaveLength(8);
    expect(selectedColumns(sheet, all)).toEqual(COLUMNS);
  });

  it('goes to the nearest row when its own went, and keeps its column', () => {
    const sheet = ground(8, 'none');
    const gone = at('gone', 'address');
    expect(mendSelection(sheet, gone, 5)).toEqual(at('f5', 'address'));
    expect(mendSelection(sheet, gone, 99)).toEqual(at('f7', 'address'));
    const kept = at('f2', 'unit');
    expect(mendSelection(sheet, kept, 0)).toBe(kept);
    expect(mendSelection(ground(0, 'none'), kept, 0)).toBeUndefined();
    expect(lineOf(sheet.order, fixtureId('gone'))).toBe(-1);
    expect(lineAt(sheet.order.layout, lineCount(sheet.order.layout) - 1)).toEqual({ kind: 'row', id: 'f7' });
  });
});
