import type { DraftEdit, DraftMode, DraftRow } from '#engine/draft/draft.ts';
import { addRows, modeOf, moveRows, type PartialRow, removeRows } from '#engine/draft/draft-plans.ts';
import { isGuess, withoutGuess } from '#engine/draft/guess.ts';
import { formatCopied, parsePasted } from '#exchange/csv/clipboard.ts';
import type { SheetCommand, SheetDeed } from '../../grid/commands.ts';
import type { Onward } from '../../grid/sheet-actions.ts';
import type { Desk } from '../desk.ts';
import { CHART_COLUMNS, copiedText, isTyped, type TypedColumn } from './chart-columns.ts';
import { type ChartCell, cellAfter, moveSelection, selectAll, selectCell, spanOf } from './chart-selection.ts';

/** Makes edits as one step; false when they were refused, and the person is told why. */
export function carryOut(desk: Desk, edits: readonly DraftEdit[]): boolean {
  if (edits.length === 0) return true;
  const done = desk.store.apply(edits);
  desk.set({ notice: done.ok ? undefined : { kind: 'refused', refusal: done.error } });
  return done.ok;
}

const rowIds = (mode: DraftMode | undefined): readonly string[] => mode?.rows.map((row) => row.id) ?? [];

/** The selected rows and columns, in the order of the chart. */
export function selectedBlock(desk: Desk) {
  const mode = desk.mode();
  const span = spanOf(rowIds(mode), desk.state().selection);
  if (mode === undefined || span === undefined) return { rows: [], columns: [] };
  return {
    rows: mode.rows.slice(span.top, span.bottom + 1),
    columns: CHART_COLUMNS.slice(span.left, span.right + 1),
  };
}

const cellEdit = (mode: string, row: string, field: TypedColumn, value: string): DraftEdit => ({
  of: 'row',
  mode,
  row,
  field,
  value,
});

/** Text for a cell: values keep their lines, everything else is one line. */
const fitting = (column: TypedColumn, text: string) =>
  column === 'ranges' ? text.trim() : text.replace(/\s+/gu, ' ').trim();

function writeAll(desk: Desk, rows: readonly DraftRow[], columns: readonly TypedColumn[], text: string): boolean {
  const mode = desk.state().mode ?? '';
  return carryOut(
    desk,
    rows.flatMap((row) => columns.map((column) => cellEdit(mode, row.id, column, fitting(column, text)))),
  );
}

export function clearSelected(desk: Desk): void {
  const { rows, columns } = selectedBlock(desk);
  writeAll(desk, rows, columns.filter(isTyped), '');
}

function fillDown(desk: Desk): void {
  const { rows, columns } = selectedBlock(desk);
  const [first, ...rest] = rows;
  if (first === undefined) return;
  const mode = desk.state().mode ?? '';
  const typed = columns.filter(isTyped);
  carryOut(
    desk,
    rest.flatMap((row) => typed.map((column) => cellEdit(mode, row.id, column, first[column]))),
  );
}

/** Adds a row below the cursor’s, with the next slot of its break, and opens its name. */
export function addRow(desk: Desk, how: 'open' | 'go' = 'go'): void {
  const { draft } = desk.store.reading();
  const mode = desk.mode();
  if (mode === undefined) return;
  const beside = mode.rows.find((row) => row.id === desk.state().selection?.cursor.row) ?? mode.rows.at(-1);
  const id = desk.makeId();
  const row: PartialRow = { break: beside?.break ?? '' };
  if (
    !carryOut(
      desk,
      addRows(draft, mode.id, beside?.id ?? null, [row], () => id),
    )
  )
    return;
  desk.select(selectCell({ row: id, column: 'name' }));
  if (how === 'open') openCell(desk);
}

/** Copies of the selected rows below them; their slots follow all others. */
function duplicateSelected(desk: Desk): void {
  const { rows } = selectedBlock(desk);
  const { mode } = desk.state();
  const last = rows.at(-1);
  if (mode === undefined || last === undefined) return;
  const copies = rows.map(({ id, order, slots, repeat, ...row }): PartialRow => row);
  const made: string[] = [];
  const makeId = () => {
    const id = desk.makeId();
    made.push(id);
    return id;
  };
  if (!carryOut(desk, addRows(desk.store.reading().draft, mode, last.id, copies, makeId))) return;
  const [first, end] = [made[0], made.at(-1)];
  if (first === undefined || end === undefined) return;
  desk.select({ cursor: { row: first, column: 'slots' }, corner: { row: end, column: 'repeat' } });
}

export function removeSelected(desk: Desk): void {
  const { rows } = selectedBlock(desk);
  const { mode } = desk.state();
  if (mode === undefined) return;
  carryOut(
    desk,
    removeRows(
      desk.store.reading().draft,
      mode,
      rows.map((row) => row.id),
    ),
  );
}

/** Moves the selected rows one line up or down. */
export function moveSelected(desk: Desk, step: 1 | -1): void {
  const mode = desk.mode();
  const span = spanOf(rowIds(mode), desk.state().selection);
  if (mode === undefined || span === undefined) return;
  const beyond = step === 1 ? mode.rows[span.bottom + 1] : mode.rows[span.top - 1];
  if (beyond === undefined) return;
  const after = step === 1 ? beyond.id : (mode.rows[span.top - 2]?.id ?? null);
  const moving = mode.rows.slice(span.top, span.bottom + 1).map((row) => row.id);
  carryOut(desk, moveRows(desk.store.reading().draft, mode.id, moving, after));
}

/** The selected cells as text for any spreadsheet. */
export function copySelected(desk: Desk): string {
  const mode = desk.mode();
  const { rows, columns } = selectedBlock(desk);
  if (mode === undefined) return '';
  return formatCopied(rows.map((row) => columns.map((column) => copiedText(mode, row, column))));
}

/** Pastes cells from the cursor on, down and to the right; what finds no row makes new ones. */
export function pasteCells(desk: Desk, text: string): void {
  const mode = desk.mode();
  const { cells } = parsePasted(text);
  const span = spanOf(rowIds(mode), desk.state().selection);
  if (mode === undefined || span === undefined || cells.length === 0) return;
  const columns = CHART_COLUMNS.slice(span.left);
  const one = cells.length === 1 && cells[0]?.length === 1 ? (cells[0][0] ?? '') : undefined;
  if (one !== undefined) {
    const { rows, columns: chosen } = selectedBlock(desk);
    writeAll(desk, rows, chosen.filter(isTyped), one);
    return;
  }
  let leftOut = 0;
  const fields = cells.map((line): PartialRow => {
    const typed = line.flatMap((value, at): [TypedColumn, string][] => {
      const column = columns[at];
      if (column !== undefined && isTyped(column)) return [[column, fitting(column, value)]];
      if (value !== '') leftOut += 1;
      return [];
    });
    return Object.fromEntries(typed);
  });
  const there = mode.rows.slice(span.top);
  const written = fields.slice(0, there.length).flatMap((row, at) =>
    Object.entries(row).map(([field, value]): DraftEdit => {
      return { of: 'row', mode: mode.id, row: there[at]?.id ?? '', field: field as TypedColumn, value };
    }),
  );
  const { draft } = desk.store.reading();
  const fresh = addRows(draft, mode.id, mode.rows.at(-1)?.id ?? null, fields.slice(there.length), desk.makeId);
  if (carryOut(desk, [...written, ...fresh]) && leftOut > 0) {
    desk.set({ notice: { kind: 'left-out', cells: leftOut } });
  }
}

export function takeBack(desk: Desk, way: 'undo' | 'redo'): void {
  const did = way === 'undo' ? desk.store.undo() : desk.store.redo();
  const said =
    way === 'undo'
      ? ({ yes: 'undone', no: 'nothing-to-undo' } as const)
      : ({ yes: 'redone', no: 'nothing-to-redo' } as const);
  desk.set({ notice: { kind: did ? said.yes : said.no } });
}

/** Opens the cursor’s cell: with `text` in place of what it holds, or else with that. A repeat opens its window. */
export function openCell(desk: Desk, text?: string): void {
  const cell = desk.state().selection?.cursor;
  const row = desk.mode()?.rows.find((each) => each.id === cell?.row);
  if (cell === undefined || row === undefined) return;
  if (!desk.store.canEdit()) {
    desk.set({ notice: { kind: 'refused', refusal: { code: 'read-only' } } });
    return;
  }
  if (!isTyped(cell.column)) {
    desk.set({ window: { kind: 'repeat' } });
    return;
  }
  desk.set({
    open: { cell, text: text ?? heldText(row, cell.column), how: text === undefined ? 'inside' : 'replace' },
    notice: undefined,
  });
}

const heldText = (row: DraftRow, column: TypedColumn) =>
  column === 'attribute' ? withoutGuess(row.attribute) : row[column];

/**
 * Closes the open cell and writes its text: into that cell, or into every selected one. Who only leaves a cell without
 * changing it has confirmed nothing.
 */
export function closeCell(desk: Desk, scope: 'cell' | 'selection', onward: Onward): void {
  const { open } = desk.state();
  const mode = desk.mode();
  if (open === undefined || mode === undefined) return;
  const { cell, text } = open;
  desk.set({ open: undefined });
  const block = selectedBlock(desk);
  const own = mode.rows.filter((row) => row.id === cell.row);
  const rows = scope === 'selection' ? block.rows : own;
  const columns = scope === 'selection' ? block.columns : [cell.column];
  const untouched = own.every((row) => isTyped(cell.column) && heldText(row, cell.column) === text);
  if (onward !== 'stay' || scope === 'selection' || !untouched) writeAll(desk, rows, columns.filter(isTyped), text);
  const next = cellOnward(rowIds(mode), cell, onward);
  if (next !== undefined) desk.select(selectCell(next));
}

export function leaveCell(desk: Desk): void {
  desk.set({ open: undefined });
}

function cellOnward(rows: readonly string[], from: ChartCell, onward: Onward): ChartCell | undefined {
  if (onward === 'stay') return undefined;
  if (onward === 'right' || onward === 'left') return cellAfter(rows, from, onward === 'right' ? 1 : -1);
  const lines = onward === 'down' ? 1 : -1;
  return moveSelection(rows, selectCell(from), { lines, columns: 0, how: 'go' }).cursor;
}

/** Rows whose attribute is a guess, of one mode. */
export const guessesIn = (mode: DraftMode | undefined): readonly DraftRow[] =>
  mode?.rows.filter((row) => isGuess(row.attribute)) ?? [];

/** Confirms the guesses of the selected rows, and goes to the next one; where none is selected, it only goes there. */
export function confirmGuesses(desk: Desk): void {
  const mode = desk.mode();
  if (mode === undefined) return;
  const { rows } = selectedBlock(desk);
  const guessed = rows.filter((row) => isGuess(row.attribute));
  const edits = guessed.map((row) => cellEdit(mode.id, row.id, 'attribute', withoutGuess(row.attribute)));
  if (!carryOut(desk, edits)) return;
  const now = desk.mode();
  const left = guessesIn(now);
  const from = rowIds(now).indexOf(rows.at(-1)?.id ?? '');
  const next = left.find((row) => rowIds(now).indexOf(row.id) > from) ?? left[0];
  const row = next?.id ?? rows.at(-1)?.id;
  if (row !== undefined) desk.select(selectCell({ row, column: 'attribute' }));
  if (guessed.length > 0) desk.set({ notice: { kind: 'confirmed', left: left.length } });
  else if (left.length === 0) desk.set({ notice: { kind: 'no-guess' } });
}

/** Goes to the next trouble of any mode that stands in a cell, or the one before. */
export function goToTrouble(desk: Desk, step: 1 | -1): void {
  const { draft, troubles } = desk.store.reading();
  const places = troubles.flatMap(({ where }) => (where.of === 'row' || where.of === 'repeat' ? [where] : []));
  const lines = draft.modes.flatMap((mode) => mode.rows.map((row) => row.id));
  const lineOf = (place: (typeof places)[number]) =>
    lines.indexOf(
      place.of === 'row'
        ? place.row
        : (modeOf(draft, place.mode)?.rows.find((row) => row.repeat === place.repeat)?.id ?? ''),
    );
  const sorted = places.toSorted((a, b) => lineOf(a) - lineOf(b));
  const at = lines.indexOf(desk.state().selection?.cursor.row ?? '');
  const next =
    step === 1
      ? (sorted.find((place) => lineOf(place) > at) ?? sorted[0])
      : (sorted.findLast((place) => lineOf(place) < at) ?? sorted.at(-1));
  if (next === undefined) desk.set({ notice: { kind: 'no-trouble' } });
  else desk.goTo(next);
}

/** Carries out a command. False when there is nowhere to go, and the key is the browser’s: Tab past the last cell. */
export function runCommand(desk: Desk, command: SheetCommand): boolean {
  const { selection } = desk.state();
  const rows = rowIds(desk.mode());
  switch (command.kind) {
    case 'move':
      if (selection) desk.select(moveSelection(rows, selection, command.motion));
      return true;
    case 'page': {
      const motion = { lines: command.pages * PAGE, columns: 0, how: command.how };
      if (selection) desk.select(moveSelection(rows, selection, motion));
      return true;
    }
    case 'tab': {
      const next = selection && cellAfter(rows, selection.cursor, command.step);
      if (next) desk.select(selectCell(next));
      return next !== undefined;
    }
    case 'open':
      openCell(desk);
      return true;
    case 'type':
      openCell(desk, command.text);
      return true;
    default:
      DOES[command.kind](desk);
      return true;
  }
}

/** Lines that a page key goes. */
const PAGE = 12;

const DOES: Readonly<Record<SheetDeed, (desk: Desk) => void>> = {
  clear: clearSelected,
  'select-all': (desk) => desk.select(selectAll(rowIds(desk.mode()), desk.state().selection)),
  'fill-down': fillDown,
  'insert-row': (desk) => addRow(desk),
  'duplicate-rows': duplicateSelected,
  'remove-rows': removeSelected,
  undo: (desk) => takeBack(desk, 'undo'),
  redo: (desk) => takeBack(desk, 'redo'),
};
