import { describe, expect, it } from 'vitest';
import { seededRng } from './rng.ts';
import {
  changeRows,
  differingRows,
  emptyTable,
  getRow,
  removeRow,
  rowsOf,
  setRow,
  type Table,
  tableOf,
} from './table.ts';

interface Row {
  readonly id: string;
  readonly n: number;
}

describe('table', () => {
  it('reads like a Map after any sequence of changes, and is the same whatever the order of its rows', () => {
    const rng = seededRng(7);
    let table: Table<Row> = emptyTable();
    const model = new Map<string, Row>();
    for (let step = 0; step < 5000; step++) {
      const id = `f${rng.int(900)}`;
      if (rng.int(3) === 0) {
        table = removeRow(table, id);
        model.delete(id);
      } else {
        const row = { id, n: step };
        table = setRow(table, row);
        model.set(id, row);
      }
      expect(table.size).toBe(model.size);
      expect(getRow(table, id)).toBe(model.get(id));
    }
    expect(new Map([...rowsOf(table)].map((row) => [row.id, row]))).toEqual(model);
    expect(tableOf([...model.values()].reverse())).toEqual(table);
  });

  it('keeps every other row, and gives back the same table when nothing changed', () => {
    const table = tableOf([
      { id: 'a', n: 1 },
      { id: 'b', n: 2 },
    ]);
    expect(setRow(table, getRow(table, 'a') as Row)).toBe(table);
    expect(removeRow(table, 'zz')).toBe(table);
    expect(getRow(setRow(table, { id: 'a', n: 3 }), 'b')).toBe(getRow(table, 'b'));
  });

  it('differingRows names exactly what changeRows changed', () => {
    const before = tableOf(Array.from({ length: 3000 }, (_, n) => ({ id: `f${n}`, n })));
    const after = changeRows(before, [
      { id: 'f7', row: { id: 'f7', n: -1 } },
      { id: 'f9', row: undefined },
      { id: 'new', row: { id: 'new', n: 0 } },
    ]);
    expect(new Set(differingRows(before, after).map((d) => d.id))).toEqual(new Set(['f7', 'f9', 'new']));
    expect(differingRows(before, before)).toEqual([]);
  });

  it('differingRows names exactly what any sequence of changes came to', () => {
    const rng = seededRng(19);
    let table: Table<Row> = tableOf(Array.from({ length: 600 }, (_, n) => ({ id: `f${n}`, n })));
    for (let round = 0; round < 300; round++) {
      const before = table;
      for (let step = rng.int(12); step >= 0; step--) {
        const id = `f${rng.int(900)}`;
        table = rng.int(2) === 0 ? removeRow(table, id) : setRow(table, { id, n: round });
      }
      const ids = new Set([...rowsOf(before), ...rowsOf(table)].map((row) => row.id));
      const expected = [...ids].filter((id) => getRow(before, id) !== getRow(table, id)).sort();
      const differing = differingRows(before, table);
      expect(differing.map((row) => row.id).sort()).toEqual(expected);
      for (const row of differing) {
        expect(row.before).toBe(getRow(before, row.id));
        expect(row.after).toBe(getRow(table, row.id));
      }
    }
  });
});
