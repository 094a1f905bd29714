import { beforeEach, expect, it } from 'vitest';
import type * as Y from 'yjs';
import { countingIds } from '#base/random-id.ts';
import { applyDraftEdits } from '#document/draft/apply-draft-edits.ts';
import { createDraftDoc } from '#document/draft/draft-doc.ts';
import { removeRows } from '#engine/draft/draft-plans.ts';
import { readChart } from '#exchange/chart/read-chart.ts';
import { draftOfEdits } from '#tests/support/random-draft.ts';
import { openDraftStore } from '../live/draft-store.ts';
import { type LinkAlone, linkAlone } from '../live/link-alone.ts';
import {
  addRow,
  clearSelected,
  closeCell,
  confirmGuesses,
  copySelected,
  guessesIn,
  moveSelected,
  openCell,
  pasteCells,
  runCommand,
  takeBack,
} from './chart/chart-actions.ts';
import type { ChartColumn } from './chart/chart-columns.ts';
import { selectCell } from './chart/chart-selection.ts';
import { createDesk, type Desk } from './desk.ts';
import { pasteEdits } from './paste/paste-edits.ts';

let desk: Desk;
let doc: Y.Doc;
let link: LinkAlone;

beforeEach(() => {
  const read = readChart('1 Dimmer\n2 Pan\n3 Pan fine\n4 Zoom');
  if (!read.ok) throw new Error(read.error.code);
  const choice = { mode: undefined, rows: 'below', repeats: new Set<never>() } as const;
  doc = createDraftDoc(pasteEdits(draftOfEdits([]), read.value, choice, countingIds('p')).edits);
  link = linkAlone();
  desk = createDesk(openDraftStore({ doc, link, origin: 'me', base: null }), countingIds('d'));
  desk.follow();
});

const rows = () => desk.mode()?.rows ?? [];
const go = (at: number, column: ChartColumn) => desk.select(selectCell({ row: rows()[at]?.id ?? '', column }));
const column = (field: 'slots' | 'attribute' | 'default' | 'name') => rows().map((row) => row[field]);

it('F9 confirms the guess one is at and goes to the next; of a selection, all', () => {
  expect(column('attribute')).toEqual(['Dimmer ?', 'Pan ?', 'Zoom ?']);
  go(0, 'attribute');
  confirmGuesses(desk);
  expect(column('attribute')).toEqual(['Dimmer', 'Pan ?', 'Zoom ?']);
  expect(desk.state().selection?.cursor.row).toBe(rows()[1]?.id);
  expect(desk.state().notice).toEqual({ kind: 'confirmed', left: 2 });
  runCommand(desk, { kind: 'select-all' });
  confirmGuesses(desk);
  expect(guessesIn(desk.mode())).toEqual([]);
  takeBack(desk, 'undo');
  expect(guessesIn(desk.mode())).toHaveLength(2);
});

it('who leaves a guess without writing has confirmed nothing; Enter in it confirms it', () => {
  go(1, 'attribute');
  openCell(desk);
  expect(desk.state().open?.text).toBe('Pan');
  closeCell(desk, 'cell', 'stay');
  expect(column('attribute')[1]).toBe('Pan ?');
  openCell(desk);
  closeCell(desk, 'cell', 'down');
  expect(column('attribute')[1]).toBe('Pan');
  expect(desk.state().selection?.cursor.row).toBe(rows()[2]?.id);
});

it('a new row takes the next slot; rows move, and copied cells paste to the same', () => {
  go(2, 'slots');
  addRow(desk);
  expect(column('slots')).toEqual(['1', '2-3', '4', '5']);
  moveSelected(desk, -1);
  expect(column('slots')).toEqual(['1', '2-3', '5', '4']);
  runCommand(desk, { kind: 'select-all' });
  const copied = copySelected(desk);
  const before = rows();
  clearSelected(desk);
  expect(column('slots')).toEqual(['', '', '', '']);
  go(0, 'slots');
  pasteCells(desk, copied);
  expect(rows()).toEqual(before);
});

it('cells pasted past the last row make new rows; past the last column they are counted', () => {
  go(2, 'default');
  pasteCells(desk, '10\t20\n30\t40\n');
  expect(column('default')).toEqual(['', '', '10', '30']);
  expect(column('slots')).toEqual(['1', '2-3', '4', '5']);
  go(0, 'part');
  pasteCells(desk, 'a\tb\tc\n');
  expect(desk.state().notice).toEqual({ kind: 'left-out', cells: 2 });
});

it('a row that somebody removes while one types in it gives back what was typed, and the cursor stays in the chart', () => {
  go(1, 'name');
  openCell(desk, 'Pan of the head');
  const { draft } = desk.store.reading();
  applyDraftEdits(doc, removeRows(draft, desk.state().mode ?? '', [rows()[1]?.id ?? '']), 'somebody');
  expect(desk.state().open).toBeUndefined();
  expect(desk.state().notice).toEqual({ kind: 'row-gone', text: 'Pan of the head' });
  expect(desk.state().selection?.cursor.row).toBe(rows()[1]?.id);
});

it('a reader opens nothing and writes nothing, and is told', () => {
  link.setStatus({ state: 'read-only', detail: '' });
  go(0, 'name');
  openCell(desk);
  expect(desk.state().open).toBeUndefined();
  clearSelected(desk);
  expect(column('name')[0]).toBe('Dimmer');
  expect(desk.state().notice).toEqual({ kind: 'refused', refusal: { code: 'read-only' } });
});
