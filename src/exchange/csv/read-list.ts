import type { Grid, GridRow } from '#engine/list/grid.ts';
import type { Layout } from '#engine/list/layout.ts';
import type { FixtureList, ListLine, ListPosition, ListRemark, UnreadReason } from '#engine/list/read-list.ts';
import { positionId } from '#engine/model/ids.ts';
import type { Rig } from '#engine/model/rig.ts';
import { accountColumns } from './account-columns.ts';
import { countOut, neighboursOf, unitsOf } from './count-out.ts';
import { type Draft, draftLine } from './draft-line.ts';
import { LIST_LIMITS } from './limits.ts';
import { listStyle } from './list-style.ts';
import { nameModes } from './name-modes.ts';
import { readOwnSheet } from './read-own-sheet.ts';
import { type SortedLine, sortLines } from './sort-lines.ts';
import { textOf } from './text-of.ts';

/**
 * Reads a list under a layout: one answer for every line, nothing left out. `rig` is the one it is meant for: its modes
 * give footprints that the list leaves out, and none of them is changed.
 */
export function readList(grid: Grid, layout: Layout, rig: Rig): FixtureList {
  if (layout.form === 'own') return readOwnSheet(grid, layout, rig);
  const sorted = sortLines(grid, layout);
  const { drafts, refused, fixtures } = sift(draftLines(grid, layout, sorted));
  const all = [...drafts.values()];
  const { named, modes } = nameModes(all.map(askedMode), rig, 'name-by-slots');
  const settled = new Map(all.map((draft, i) => [draft, named[i]]));
  const neighbours = neighboursOf(all);
  const lines = grid.rows.map((row, index): ListLine => {
    const base = { line: row.line, text: textOf(row) };
    const reason = refused.get(index);
    if (reason !== undefined) return { ...base, kind: 'unread', reason, remarks: [] };
    const draft = drafts.get(index);
    if (draft === undefined) return plainLine(row, sorted[index] as SortedLine);
    const mode = settled.get(draft);
    const counted = countOut(draft, mode?.mode ?? '', mode?.footprints, neighbours);
    const remarks = [...draft.remarks, ...counted.remarks, ...splitRemark(mode)];
    return { ...base, kind: 'fixtures', fixtures: counted.fixtures, remarks };
  });
  const columns = accountColumns(grid, layout, new Map([...drafts].map(([index, draft]) => [index, draft.taken])));
  return {
    lines,
    positions: positionsOf(lines),
    modes,
    universes: [],
    notes: [],
    wanted: [],
    cards: [],
    columns,
    fixtures,
  };
}

/** Parts the lines that make fixtures from those that stand for none or for more than a list may, by row index. */
function sift(drafted: ReadonlyMap<number, Draft>) {
  const drafts = new Map<number, Draft>();
  const refused = new Map<number, UnreadReason>();
  let fixtures = 0;
  for (const [index, draft] of drafted) {
    const count = unitsOf(draft);
    const tooMany = draft.tooMany || count > LIST_LIMITS.perLine || fixtures + count > LIST_LIMITS.fixtures;
    if (count === 0) refused.set(index, 'no-fixture');
    else if (tooMany) refused.set(index, 'too-many-units');
    else {
      drafts.set(index, draft);
      fixtures += count;
    }
  }
  return { drafts, refused, fixtures };
}

function draftLines(grid: Grid, layout: Layout, sorted: readonly SortedLine[]): ReadonlyMap<number, Draft> {
  const rows = grid.rows.filter((_, index) => sorted[index]?.kind === 'fixture');
  const style = listStyle(rows, layout.columns);
  const drafts = new Map<number, Draft>();
  for (const [index, line] of sorted.entries()) {
    const row = grid.rows[index];
    if (line.kind === 'fixture' && row !== undefined) drafts.set(index, draftLine(row, layout.columns, style, line));
  }
  return drafts;
}

/** What a line asks for as its mode. A range of slots stands in for a footprint that nothing else gives. */
function askedMode(draft: Draft) {
  const { type, mode } = draft.texts;
  const address = draft.addresses.address;
  const slots = address !== undefined && 'start' in address ? address.slots : null;
  const each = slots === null ? 0 : slots / Math.max(1, unitsOf(draft));
  const ranged = type !== '' && Number.isInteger(each) && each >= 1 && each <= 512 ? [each] : undefined;
  return { type, mode, footprints: draft.footprints ?? ranged };
}

function splitRemark(mode: { readonly mode: string; readonly split: boolean } | undefined): readonly ListRemark[] {
  return mode?.split ? [{ code: 'mode-split', column: null, text: mode.mode }] : [];
}

function plainLine(row: GridRow, sorted: SortedLine): ListLine {
  const base = { line: row.line, text: textOf(row) };
  switch (sorted.kind) {
    case 'position':
      return { ...base, kind: 'position', position: sorted.position, remarks: leftOver(row, sorted.column) };
    case 'universe':
      return { ...base, kind: 'universe', universe: sorted.universe, remarks: leftOver(row, sorted.column) };
    case 'unread':
      return { ...base, kind: 'unread', reason: 'no-fixture', remarks: [] };
    case 'fixture':
      throw new Error(`line ${row.line} was sorted as a fixture and not drafted`);
    default:
      return { ...base, kind: sorted.kind, remarks: [] };
  }
}

/** Cells of a naming line that say something else as well. */
function leftOver(row: GridRow, named: number): readonly ListRemark[] {
  return row.cells.flatMap((cell, column) =>
    column > named && cell.trim() !== '' ? [{ code: 'not-taken' as const, column, text: cell.trim() }] : [],
  );
}

function positionsOf(lines: readonly ListLine[]): readonly ListPosition[] {
  const names = new Map<string, ListPosition>();
  const add = (name: string) => {
    const id = positionId(name);
    if (id !== '' && !names.has(id)) names.set(id, { name, order: null });
  };
  for (const line of lines) {
    if (line.kind === 'position') add(line.position);
    if (line.kind === 'fixtures') for (const cells of line.fixtures) add(String(cells.position ?? ''));
  }
  return [...names.values()];
}
