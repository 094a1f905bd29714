import { describe, expect, it } from 'vitest';
import { countingIds } from '#base/random-id.ts';
import { seededRng } from '#base/rng.ts';
import { applyEdits } from '#engine/model/apply-edits.ts';
import type { Plan } from '#engine/model/edit.ts';
import { PERSON_FIELDS } from '#engine/model/field.ts';
import type { Cells } from '#engine/model/fixture.ts';
import { type FixtureId, fixtureId } from '#engine/model/ids.ts';
import { EMPTY_RIG, type Rig } from '#engine/model/rig.ts';
import { rowsInOrder } from '#engine/model/row-order.ts';
import { cellText } from '../../live/rows/cell-text.ts';
import type { ColumnId } from '../../live/rows/column.ts';
import { pasteCells } from './paste-cells.ts';
import { clearCells, writeCells } from './write-cells.ts';

const rigOf = (...rows: readonly Cells[]): Rig =>
  applyEdits(
    EMPTY_RIG,
    rows.map((cells, n) => ({ kind: 'add-fixture', fixture: fixtureId(`f${n}`), cells: { order: n, ...cells } })),
  );

const made = (rig: Rig, plan: Plan | undefined) => applyEdits(rig, plan?.edits ?? []);

/** The sheet as text, rows as they were put: `101 LX 1|102 LX 2`. */
const print = (rig: Rig, ...columns: readonly ColumnId[]) =>
  rowsInOrder(rig)
    .map((fixture) => columns.map((column) => cellText(rig, fixture, column)).join(' '))
    .join('|');

const ids = (...names: readonly string[]): readonly FixtureId[] => names.map(fixtureId);
const THREE = rigOf({ channel: 1, address: 1 }, { channel: 2 }, { channel: 3, position: 'LX 1' });

describe('cells', () => {
  it('writes one typed text into every selected cell, read as each field reads it', () => {
    const plan = writeCells(THREE, { rows: ids('f0', 'f1'), columns: ['channel', 'address', 'unit'] }, '2');
    expect(print(made(THREE, plan), 'channel', 'address', 'unit')).toBe('2 1:2 2|2 1:2 2|3  ');
    expect(plan?.name).toBe('edit');
  });

  it('makes no plan where nothing changes, and never writes the footprint', () => {
    expect(writeCells(THREE, { rows: ids('f1'), columns: ['channel'] }, '2')).toBeUndefined();
    expect(writeCells(THREE, { rows: ids('f1'), columns: ['footprint'] }, '2')).toBeUndefined();
    expect(clearCells(THREE, { rows: ids('f1', 'gone'), columns: ['purpose'] })).toBeUndefined();
  });

  it('clears', () => {
    const cleared = clearCells(THREE, { rows: ids('f0', 'f2'), columns: ['channel', 'position'] });
    expect(print(made(THREE, cleared), 'channel', 'position')).toBe(' |2 | ');
  });
});

describe('paste', () => {
  const target = (rows: readonly FixtureId[], columns: readonly ColumnId[], selected = [1, 1]) => ({
    rows,
    columns,
    selectedRows: selected[0] ?? 1,
    selectedColumns: selected[1] ?? 1,
  });

  const paste = (rig: Rig, where: ReturnType<typeof target>, texts: readonly (readonly string[])[]) => {
    const result = pasteCells(rig, where, texts, countingIds('p'));
    if (!result.ok) throw new Error(result.error.code);
    return result.value;
  };

  it('of a copied block gives the block back', () => {
    const rng = seededRng(9);
    for (let round = 0; round < 100; round++) {
      const cell = () => rng.pick([null, 'LX 1', "'7", '4A', 12, 513]);
      const rig = rigOf(...Array.from({ length: 4 }, () => Object.fromEntries(PERSON_FIELDS.map((f) => [f, cell()]))));
      const texts = rowsInOrder(rig).map((fixture) => PERSON_FIELDS.map((field) => cellText(rig, fixture, field)));
      const pasted = paste(EMPTY_RIG, target([], PERSON_FIELDS), texts);
      const copy = made(EMPTY_RIG, pasted.plan);
      const filled = texts.filter((row) => row.some((text) => text !== ''));
      expect(rowsInOrder(copy).map((row) => PERSON_FIELDS.map((field) => cellText(copy, row, field)))).toEqual(filled);
      expect(pasted.leftOut).toBe(0);
    }
  });

  it('repeats to fill a selection it fits, makes rows past the last, and says what found no place', () => {
    const one = paste(THREE, target(ids('f0', 'f1', 'f2'), ['channel', 'purpose'], [3, 2]), [['7']]);
    expect(print(made(THREE, one.plan), 'channel', 'purpose')).toBe('7 7|7 7|7 7');
    const long = paste(THREE, target(ids('f2'), ['unit', 'footprint']), [['1', '9', 'x'], ['2'], ['']]);
    expect(print(made(THREE, long.plan), 'unit')).toBe('||1|2');
    expect(long.leftOut).toBe(2);
  });

  it('of more rows than one plan makes is refused as a whole', () => {
    const texts = Array.from({ length: 5001 }, (_, n) => [String(n)]);
    expect(pasteCells(THREE, target([], ['unit']), texts, countingIds('p'))).toEqual({
      ok: false,
      error: { code: 'too-many-rows', count: 5001, limit: 5000 },
    });
  });
});
