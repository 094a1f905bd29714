import { describe, expect, it } from 'vitest';
import { countingIds } from '#base/random-id.ts';
import { rowsOf } from '#base/table.ts';
import { applyEdits } from '#engine/model/apply-edits.ts';
import { EMPTY_RIG, type Rig } from '#engine/model/rig.ts';
import { guessLayout } from './guess-layout.ts';
import { importPlan, linesAlreadyIn } from './import-plan.ts';
import { readGrid } from './read-grid.ts';
import { readList } from './read-list.ts';

const LIST = `Position,Unit,Channel,Type,Mode,Slots,Address
Bridge,1,1,Spot,Basic,16,1:1
Bridge,2,2,Spot,Basic,16,1:17
Floor,1,3,Wash,,9,1:33
`;

function listOf(text: string, rig: Rig) {
  const grid = readGrid(text);
  if (!grid.ok) throw new Error(JSON.stringify(grid.error));
  return readList(grid.value, guessLayout(grid.value), rig);
}

const planOf = (text: string, rig: Rig, order: number, exclude?: ReadonlySet<number>) =>
  importPlan(rig, listOf(text, rig), countingIds('i'), order, exclude);

const once = applyEdits(EMPTY_RIG, planOf(LIST, EMPTY_RIG, 1).edits);

describe('importPlan', () => {
  it('is one plan named import: positions and modes first, then the rows in order', () => {
    const plan = planOf(LIST, EMPTY_RIG, 5);
    expect(plan.name).toBe('import');
    expect(plan.edits.map((edit) => edit.kind)).toEqual([
      'set-position',
      'set-position',
      'set-mode',
      'set-mode',
      'add-fixture',
      'add-fixture',
      'add-fixture',
    ]);
    const rows = plan.edits.flatMap((edit) => (edit.kind === 'add-fixture' ? [edit.cells.order] : []));
    expect(rows).toEqual([5, 6, 7]);
  });

  it('tells which lines the rig has already, and leaves out those it is told to', () => {
    expect([...linesAlreadyIn(once, listOf(LIST, once))]).toEqual([2, 3, 4]);
    expect([...linesAlreadyIn(once, listOf(LIST.replace('Bridge,2,2', 'bridge ,2,9'), once))]).toEqual([2, 4]);
    const again = applyEdits(once, planOf(LIST, once, 4, new Set([2, 3, 4])).edits);
    expect(again).toEqual(once);
  });

  it('brings in no position or mode that only a line left out uses', () => {
    const plan = planOf(LIST, EMPTY_RIG, 1, new Set([4]));
    const rig = applyEdits(EMPTY_RIG, plan.edits);
    expect([...rowsOf(rig.positions)].map((position) => position.name)).toEqual(['Bridge']);
    expect([...rowsOf(rig.modes)].map((mode) => mode.type)).toEqual(['Spot']);
  });

  it('never changes a mode that the rig has: another footprint comes in under a name of its own', () => {
    const list = listOf(LIST.replaceAll('Basic,16', 'Basic,18'), once);
    const rig = applyEdits(once, importPlan(once, list, countingIds('j'), 4).edits);
    const spots = [...rowsOf(rig.modes)]
      .filter((mode) => mode.type === 'Spot')
      .map((mode) => `${mode.mode}: ${mode.footprints}`);
    expect(spots.sort()).toEqual(['Basic (18 slots): 18', 'Basic: 16']);
    expect(list.lines[1]?.remarks.map((remark) => remark.code)).toEqual(['mode-split']);
  });

  it('counts on by the footprint that the rig knows where the list has none', () => {
    const list = listOf('Position,Unit,Type,Mode,Qty,Address\nFloor,1,Spot,Basic,3,2:1\n', once);
    const starts = list.lines.flatMap((line) =>
      line.kind === 'fixtures' ? line.fixtures.map((cells) => cells.address) : [],
    );
    expect(starts).toEqual([513, 529, 545]);
  });

  it('puts new positions behind those of the rig', () => {
    const rig = applyEdits(once, planOf('Position,Unit,Type\nLadder,1,Spot\nFloor,9,Spot\n', once, 4).edits);
    const names = [...rowsOf(rig.positions)].sort((a, b) => a.order - b.order).map((position) => position.name);
    expect(names).toEqual(['Bridge', 'Floor', 'Ladder']);
  });
});
