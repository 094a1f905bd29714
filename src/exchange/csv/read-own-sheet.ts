import type { Grid, GridRow } from '#engine/list/grid.ts';
import type { Layout } from '#engine/list/layout.ts';
import type { Meaning } from '#engine/list/meaning.ts';
import type { FixtureList, ListLine, ListPosition, ListRemark } from '#engine/list/read-list.ts';
import { parseCellText } from '#engine/model/cell-text.ts';
import { ADDRESS_FIELDS, CELL_LIMIT, type CellValue, FIELDS, type Field } from '#engine/model/field.ts';
import type { Cells } from '#engine/model/fixture.ts';
import { modeId, positionId } from '#engine/model/ids.ts';
import type { Rig } from '#engine/model/rig.ts';
import { END_MARK } from '#engine/sheet/patch-format.ts';
import { accountColumns } from './account-columns.ts';
import { LIST_LIMITS } from './limits.ts';
import { placeAddress } from './list-address.ts';
import { type NamedMode, nameModes } from './name-modes.ts';
import { type OwnRecords, readRecord } from './own-records.ts';
import { readFootprint } from './read-number.ts';
import { textOf } from './text-of.ts';

interface OwnFixture {
  readonly cells: Cells;
  /** What the sheet prints as its footprint: counts only when no record at the foot gives the mode's. */
  readonly printed: readonly number[] | undefined;
  readonly remarks: readonly ListRemark[];
}

/** Reads a patch sheet of ours: cells exactly as they stand, the records at its foot, and nothing guessed. */
export function readOwnSheet(grid: Grid, layout: Layout, rig: Rig): FixtureList {
  const ended = grid.rows.findIndex((row) => row.cells.length === 1 && row.cells[0] === END_MARK);
  const end = ended < 0 ? grid.rows.length : ended;
  const heading = layout.headingRow ?? -1;
  const isRow = (row: GridRow, index: number) =>
    index > heading && index < end && row.cells.some((cell) => cell !== '');
  const rows = grid.rows.filter(isRow).slice(0, LIST_LIMITS.fixtures);
  const fixtures = new Map(rows.map((row) => [row, readOwnFixture(row, layout)]));
  const records: OwnRecords = { modes: [], positions: [], universes: [], notes: [], wanted: [], cards: [] };
  const feet = new Map(grid.rows.slice(end).map((row) => [row, readRecord(row, records)]));
  const settled = settleModes([...fixtures.values()], records, rig);
  const lines = grid.rows.map((row, index): ListLine => {
    const base = { line: row.line, text: textOf(row), remarks: [] };
    const fixture = fixtures.get(row);
    if (fixture !== undefined) return fixtureLine(row, fixture, settled.byFixture.get(fixture));
    if (row.cells.every((cell) => cell === '')) return { ...base, kind: 'blank' };
    if (index <= heading) return { ...base, kind: index === heading ? 'heading' : 'title' };
    const foot = feet.get(row);
    if (foot === undefined) return { ...base, kind: 'unread', reason: 'too-many-units' };
    return foot === 'bad' ? { ...base, kind: 'unread', reason: 'bad-record' } : { ...base, kind: foot };
  });
  const whole = new Set(layout.columns.keys());
  const columns = accountColumns(
    grid,
    layout,
    new Map([...grid.rows.entries()].filter(([, row]) => fixtures.has(row)).map(([index]) => [index, whole])),
  );
  const positions = ended < 0 ? positionsOf([...fixtures.values()]) : records.positions;
  const { universes, notes, wanted, cards } = records;
  return { lines, positions, modes: settled.modes, universes, notes, wanted, cards, columns, fixtures: fixtures.size };
}

function fixtureLine(row: GridRow, fixture: OwnFixture, named: NamedMode | undefined): ListLine {
  const remarks = [...fixture.remarks];
  if (named?.split) remarks.push({ code: 'mode-split', column: null, text: named.mode });
  const mode = named?.mode ?? '';
  const cells: Cells = mode === '' ? fixture.cells : { ...fixture.cells, mode };
  return { kind: 'fixtures', line: row.line, text: textOf(row), remarks, fixtures: [cells] };
}

function readOwnFixture(row: GridRow, layout: Layout): OwnFixture {
  const column = (meaning: Meaning) => layout.columns.findIndex((each) => each.meaning === meaning);
  const text = (meaning: Meaning) => row.cells[column(meaning)] ?? '';
  const remarks: ListRemark[] = [];
  const cells: Partial<Record<Field, CellValue>> = {};
  for (const field of FIELDS) {
    const part = (ADDRESS_FIELDS as readonly Field[]).indexOf(field);
    const value = part < 0 ? parseCellText(field, text(field)) : readOwnAddress(field, part, text);
    if (value === null) continue;
    if (typeof value === 'number' || value.length <= CELL_LIMIT) cells[field] = value;
    else remarks.push({ code: 'too-long', column: column(field), text: value.slice(0, 80) });
  }
  return { cells, printed: readFootprint(text('footprint')), remarks };
}

function readOwnAddress(field: Field, part: number, text: (meaning: Meaning) => string): CellValue {
  const suffix = ['', '2', '3', '4'][part] as '' | '2' | '3' | '4';
  const universe = text(`universe${suffix}`);
  const slot = text(`slot${suffix}`);
  if (universe === '') return parseCellText(field, slot);
  const read =
    /^\s*\d{1,5}\s*$/.test(universe) && /^\s*\d{1,3}\s*$/.test(slot)
      ? placeAddress(Number(universe), Number(slot))
      : undefined;
  return read ?? `${universe}:${slot}`;
}

/** Names of the fixtures' modes as the rig will have them: those of the sheet, unless the rig has another of that name. */
function settleModes(fixtures: readonly OwnFixture[], records: OwnRecords, rig: Rig) {
  const recorded = new Map(records.modes.map((mode) => [modeId(mode.type, mode.mode), mode.footprints]));
  const asked = fixtures.map(({ cells, printed }) => {
    const type = String(cells.type ?? '');
    const mode = String(cells.mode ?? '');
    return { type, mode, footprints: recorded.get(modeId(type, mode)) ?? printed };
  });
  // Records come first, so that their spelling is the one kept.
  const { named, modes } = nameModes([...records.modes, ...asked], rig, 'keep');
  const byFixture = new Map(fixtures.map((fixture, i) => [fixture, named[records.modes.length + i]]));
  return { byFixture, modes };
}

/** The positions that the rows name, for a sheet whose foot was cut off. */
function positionsOf(fixtures: readonly OwnFixture[]): readonly ListPosition[] {
  const positions = new Map<string, ListPosition>();
  for (const { cells } of fixtures) {
    const name = String(cells.position ?? '');
    if (positionId(name) !== '' && !positions.has(positionId(name)))
      positions.set(positionId(name), { name, order: null });
  }
  return [...positions.values()];
}
