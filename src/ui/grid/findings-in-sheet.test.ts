import { expect, it } from 'vitest';
import type * as Y from 'yjs';
import { countingIds } from '#base/random-id.ts';
import { applyPlan } from '#document/edit/apply-plan.ts';
import { createRigDoc } from '#document/schema/rig-doc.ts';
import { absolute } from '#engine/model/address.ts';
import type { Edit } from '#engine/model/edit.ts';
import type { Cells } from '#engine/model/fixture.ts';
import { fixtureId } from '#engine/model/ids.ts';
import { linkAlone } from '../live/link-alone.ts';
import { openRigStore } from '../live/rig-store.ts';
import { EVERYTHING } from '../live/rows/view.ts';
import { fieldMarks } from './field-marks.ts';
import { cellOfFinding, nextFinding } from './next-finding.ts';
import { selectCell } from './selection.ts';
import { createSheet } from './sheet.ts';
import { showClearing, showSeries } from './show-plan.ts';

const ROWS: readonly Cells[] = [
  { type: 'Spot', mode: 'Wide', address: absolute(1, 1), channel: 1, position: 'LX 1', unit: '1' },
  { type: 'Spot', mode: 'Wide', address: absolute(1, 10), channel: 2, position: 'LX 1', unit: '2' },
  { type: 'Spot', mode: 'Narrow', address: absolute(2, 1), channel: 3, position: 'LX 1', unit: '3' },
  { type: 'Spot', mode: 'Wide', address: absolute(3, 1), channel: 'odd', position: 'LX 1', unit: '4' },
];

function sheetOf(rows: readonly Cells[]) {
  const doc: Y.Doc = createRigDoc();
  const edits: Edit[] = [{ kind: 'set-mode', type: 'Spot', mode: 'Wide', footprints: [16] }];
  rows.forEach((cells, n) => {
    edits.push({ kind: 'add-fixture', fixture: fixtureId(`f${n}`), cells: { ...cells, order: n } });
  });
  applyPlan(doc, { name: 'import', edits }, 'seed');
  const store = openRigStore({ doc, link: linkAlone(), origin: 'me', isMine: () => true, clock: { now: () => 0 } });
  const sheet = createSheet(store, countingIds('n'), { load: () => null, save: () => undefined });
  sheet.open();
  return sheet;
}

it('marks the cells that findings speak of, the gravest where several do', () => {
  const { store } = sheetOf(ROWS);
  const marks = ['f0', 'f1', 'f2', 'f3'].map((id) => {
    const row = store.row(fixtureId(id));
    return row && fieldMarks(row);
  });
  expect(marks[0]).toMatchObject({ address: 'blocker' });
  expect(marks[1]).toMatchObject({ address: 'blocker' });
  expect(Object.keys(marks[2] ?? {})).toEqual(['mode']);
  expect(Object.keys(marks[3] ?? {})).toEqual(['channel']);
});

it('goes from finding to finding down the sheet and round, at the cell each speaks of', () => {
  const sheet = sheetOf(ROWS);
  const visited: string[] = [];
  for (let n = 0; n < 5; n++) {
    const cell = nextFinding(sheet, { severity: undefined, step: 1 });
    if (cell) sheet.select(selectCell(cell));
    visited.push(`${cell?.row} ${cell?.column}`);
  }
  expect(visited).toEqual(['f1 address', 'f2 mode', 'f3 channel', 'f0 address', 'f1 address']);
  expect(nextFinding(sheet, { severity: 'blocker', step: -1 })?.row).toBe('f0');
  expect(nextFinding(sheet, { severity: 'note', step: 1 })).toBeUndefined();
});

it('says of a finding whose rows the filter hides that it leads nowhere', () => {
  const sheet = sheetOf(ROWS);
  const [clash] = sheet.store.findings();
  if (clash === undefined) throw new Error('no finding');
  expect(cellOfFinding(sheet, clash)?.row).toBe('f0');
  sheet.setView({ grouping: 'none', sort: null, filter: { ...EVERYTHING, column: 'mode', text: 'narrow' } });
  expect(cellOfFinding(sheet, clash)).toBeUndefined();
});

it('shows what clears a row: a plan for a clash, the types for an unknown mode, nothing for the rest', () => {
  const sheet = sheetOf(ROWS);
  expect(showClearing(sheet, fixtureId('f0'))).toBe(true);
  expect(sheet.state().preview?.plan.name).toBe('clear-clash');
  expect(showClearing(sheet, fixtureId('f2'))).toBe(true);
  expect(sheet.state().panel).toBe('types');
  expect(showClearing(sheet, fixtureId('f3'))).toBe(false);
  expect(showClearing(sheet, fixtureId('gone'))).toBe(false);
});

it('shows a series before it is filled, and says why there is none', () => {
  const sheet = sheetOf(ROWS);
  const corner = { row: fixtureId('f2'), column: 'channel' } as const;
  sheet.select({ cursor: { row: fixtureId('f0'), column: 'channel' }, corner });
  showSeries(sheet);
  expect(sheet.state().notice).toEqual({ kind: 'no-plan', refusal: { code: 'changes-nothing' } });
  sheet.select({ cursor: { row: fixtureId('f0'), column: 'address' }, corner: { ...corner, column: 'address' } });
  showSeries(sheet);
  expect(sheet.state().preview?.plan.edits).toContainEqual({
    kind: 'set-cell',
    fixture: 'f1',
    field: 'address',
    value: absolute(1, 17),
  });
});
