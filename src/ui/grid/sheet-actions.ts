import type { Result } from '#base/result.ts';
import { getRow } from '#base/table.ts';
import { isAddressField } from '#engine/model/cell-text.ts';
import type { Plan } from '#engine/model/edit.ts';
import { isLocked } from '#engine/model/locked.ts';
import { rowsInOrder } from '#engine/model/row-order.ts';
import { fillDownPlan } from '#engine/patch/fill-plans.ts';
import type { PlanRefusal } from '#engine/patch/plan-refusal.ts';
import { duplicatePlan, insertPlan, removePlan } from '#engine/patch/row-plans.ts';
import { formatCopied, parsePasted } from '#exchange/csv/clipboard.ts';
import { cellText } from '../live/rows/cell-text.ts';
import { lineCount, lineOf, rowsBetween } from '../live/rows/lines.ts';
import type { SheetCommand, SheetDeed } from './commands.ts';
import { pasteCells } from './plans/paste-cells.ts';
import { type CellBlock, clearCells, isWritable, writeCells } from './plans/write-cells.ts';
import {
  type CellRef,
  cellAfter,
  moveSelection,
  type Selection,
  selectAll,
  selectCell,
  selectedColumns,
  selectedRows,
  stretchTo,
} from './selection.ts';
import type { Sheet } from './sheet.ts';

/** The rows and columns that are selected. */
export function selectedBlock(sheet: Sheet): CellBlock {
  const { selection } = sheet.state();
  if (selection === undefined) return { rows: [], columns: [] };
  const ground = sheet.ground();
  return { rows: selectedRows(ground, selection), columns: selectedColumns(ground, selection) };
}

/** Applies a plan and says so when it is refused. True when it was carried out. */
export function carryOut(sheet: Sheet, plan: Plan | undefined): boolean {
  if (plan === undefined) return false;
  const result = sheet.store.apply(plan);
  sheet.set({ notice: result.ok ? undefined : { kind: 'refused', refusal: result.error } });
  return result.ok;
}

export function clearSelected(sheet: Sheet): void {
  carryOut(sheet, clearCells(sheet.store.rig(), selectedBlock(sheet)));
}

/** Carries a plan of the engine out, or says why there is none. True when it was carried out. */
export function carryOutResult(sheet: Sheet, plan: Result<Plan, PlanRefusal>): boolean {
  if (plan.ok) return carryOut(sheet, plan.value);
  sheet.set({ notice: { kind: 'no-plan', refusal: plan.error } });
  return false;
}

export function fillSelectedDown(sheet: Sheet): void {
  const { rows, columns } = selectedBlock(sheet);
  carryOutResult(sheet, fillDownPlan(sheet.store.rig(), rows, columns.filter(isWritable)));
}

/** Adds a row after the cursor's, at the same position, and goes there. */
export function addRow(sheet: Sheet): void {
  const rig = sheet.store.rig();
  const beside = sheet.state().selection?.cursor.row;
  const fixture = beside === undefined ? undefined : getRow(rig.fixtures, beside);
  const after = fixture?.id ?? rowsInOrder(rig).at(-1)?.id ?? null;
  const cells = fixture && fixture.position !== '' ? { position: fixture.position } : {};
  goToNew(sheet, insertPlan(rig, { after, rows: [cells] }, sheet.makeId));
}

export function duplicateSelected(sheet: Sheet): void {
  const fixtures = selectedBlock(sheet).rows;
  const request = { fixtures, copies: 1, addresses: 'none' } as const;
  goToNew(sheet, duplicatePlan(sheet.store.rig(), request, sheet.makeId));
}

function goToNew(sheet: Sheet, plan: Result<Plan, PlanRefusal>): void {
  if (!carryOutResult(sheet, plan) || !plan.ok) return;
  const rows = plan.value.edits.flatMap((edit) => (edit.kind === 'add-fixture' ? [edit.fixture] : []));
  const { selection, columns } = sheet.state();
  const column = selection?.cursor.column ?? columns[0];
  const [first, last] = [rows[0], rows.at(-1)];
  if (first === undefined || last === undefined || column === undefined) return;
  // A filter may hide the new row; the cursor then stays where it is.
  if (lineOf(sheet.ground().order, first) < 0) return;
  sheet.select(stretchTo(selectCell({ row: first, column }), { row: last, column }));
}

export function removeSelected(sheet: Sheet): void {
  carryOutResult(sheet, removePlan(sheet.store.rig(), selectedBlock(sheet).rows));
}

/** The selected cells as text for any spreadsheet. */
export function copySelected(sheet: Sheet): string {
  const rig = sheet.store.rig();
  const { rows, columns } = selectedBlock(sheet);
  const texts = rows.map((id) => {
    const fixture = getRow(rig.fixtures, id);
    return columns.map((column) => (fixture ? cellText(rig, fixture, column) : ''));
  });
  return formatCopied(texts);
}

/** Pastes text from any spreadsheet at the selection, and selects what it filled. */
export function pasteText(sheet: Sheet, text: string): void {
  const { selection, columns } = sheet.state();
  const { cells, cut } = parsePasted(text);
  const block = selectedBlock(sheet);
  const order = sheet.ground().order;
  const top = selection ? Math.min(lineOf(order, selection.cursor.row), lineOf(order, selection.corner.row)) : 0;
  const left = columns.indexOf(block.columns[0] ?? columns[0] ?? 'channel');
  const target = {
    rows: rowsBetween(order.layout, top, lineCount(order.layout) - 1),
    columns: columns.slice(Math.max(0, left)),
    selectedRows: block.rows.length,
    selectedColumns: block.columns.length,
  };
  const pasted = pasteCells(sheet.store.rig(), target, cells, sheet.makeId);
  if (!pasted.ok) {
    sheet.set({ notice: { kind: 'refused', refusal: pasted.error } });
    return;
  }
  const { plan, leftOut } = pasted.value;
  if (plan !== undefined && !carryOut(sheet, plan)) return;
  if (cut) sheet.set({ notice: { kind: 'cut-short' } });
  else if (leftOut > 0) sheet.set({ notice: { kind: 'left-out', cells: leftOut } });
}

export function takeBack(sheet: Sheet, way: 'undo' | 'redo'): void {
  const plan = way === 'undo' ? sheet.store.undo() : sheet.store.redo();
  if (plan !== undefined) sheet.set({ notice: { kind: way === 'undo' ? 'undone' : 'redone', plan } });
  else sheet.set({ notice: { kind: way === 'undo' ? 'nothing-to-undo' : 'nothing-to-redo' } });
}

/** Opens the cursor's cell: with `text` in place of what it holds, or else with that. A cell nobody writes stays shut, and so does a locked address. [LK3] */
export function openCell(sheet: Sheet, text?: string): void {
  const cell = sheet.state().selection?.cursor;
  if (cell === undefined || !isWritable(cell.column)) return;
  const rig = sheet.store.rig();
  const fixture = getRow(rig.fixtures, cell.row);
  if (fixture === undefined) return;
  if (!sheet.store.canEdit()) {
    sheet.set({ notice: { kind: 'refused', refusal: { code: 'read-only' } } });
    return;
  }
  if (isAddressField(cell.column) && isLocked(fixture)) {
    sheet.set({ notice: { kind: 'no-plan', refusal: { code: 'locked', fixture: fixture.id } } });
    return;
  }
  const held = cellText(rig, fixture, cell.column);
  sheet.set({
    editing: { cell, text: text ?? held, how: text === undefined ? 'inside' : 'replace' },
    notice: undefined,
  });
}

/** Where the cursor goes once a cell is closed. */
export type Onward = 'stay' | 'down' | 'up' | 'right' | 'left';

/** Closes the open cell and writes its text: into that cell, or into every selected one. */
export function closeCell(sheet: Sheet, scope: 'cell' | 'selection', onward: Onward): void {
  const { editing, selection } = sheet.state();
  if (editing === undefined) return;
  const next = cellOnward(sheet, editing.cell, onward);
  const one = { rows: [editing.cell.row], columns: [editing.cell.column] };
  const block = scope === 'selection' && selection ? selectedBlock(sheet) : one;
  sheet.set({ editing: undefined });
  carryOut(sheet, writeCells(sheet.store.rig(), block, editing.text));
  if (next) sheet.select(selectCell(next));
}

/** Closes the open cell and leaves it as it was. */
export function leaveCell(sheet: Sheet): void {
  sheet.set({ editing: undefined });
}

function cellOnward(sheet: Sheet, from: CellRef, onward: Onward): CellRef | undefined {
  const ground = sheet.ground();
  if (onward === 'stay') return undefined;
  if (onward === 'right' || onward === 'left') return cellAfter(ground, from, onward === 'right' ? 1 : -1);
  const lines = onward === 'down' ? 1 : -1;
  return moveSelection(ground, selectCell(from), { lines, columns: 0, how: 'go' }).cursor;
}

/**
 * Carries out a command. `pageLines` is how many lines the window shows. False when there is nowhere to go, and the key
 * is the browser's: Tab past the last cell leaves the sheet.
 */
export function runCommand(sheet: Sheet, command: SheetCommand, pageLines: number): boolean {
  const { selection } = sheet.state();
  switch (command.kind) {
    case 'move':
      return go(sheet, selection && moveSelection(sheet.ground(), selection, command.motion));
    case 'page': {
      const motion = { lines: command.pages * Math.max(1, pageLines - 1), columns: 0, how: command.how };
      return go(sheet, selection && moveSelection(sheet.ground(), selection, motion));
    }
    case 'tab': {
      const next = selection && cellAfter(sheet.ground(), selection.cursor, command.step);
      return next !== undefined && go(sheet, selectCell(next));
    }
    case 'open':
      openCell(sheet);
      return true;
    case 'type':
      openCell(sheet, command.text);
      return true;
    default:
      DOES[command.kind](sheet);
      return true;
  }
}

const DOES: Readonly<Record<SheetDeed, (sheet: Sheet) => void>> = {
  clear: clearSelected,
  'select-all': selectWhole,
  'fill-down': fillSelectedDown,
  'insert-row': addRow,
  'duplicate-rows': duplicateSelected,
  'remove-rows': removeSelected,
  undo: (sheet) => takeBack(sheet, 'undo'),
  redo: (sheet) => takeBack(sheet, 'redo'),
};

function selectWhole(sheet: Sheet): void {
  const { selection } = sheet.state();
  if (selection) sheet.select(selectAll(sheet.ground(), selection));
}

function go(sheet: Sheet, selection: Selection | undefined): boolean {
  if (selection) sheet.select(selection);
  return true;
}
