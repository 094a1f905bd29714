import type * as Y from 'yjs';
import { changeRows, getRow, type RowChange, type Table, tableOf } from '#base/table.ts';
import { sameFixture } from '#engine/diff/same-fixture.ts';
import type { Cells, Fixture } from '#engine/model/fixture.ts';
import type { FixtureId } from '#engine/model/ids.ts';
import { cellsOf, readFixture } from '#engine/model/read-fixture.ts';
import type { Rig } from '#engine/model/rig.ts';
import { isCellValue } from '../schema/block.ts';
import { parseCellKey } from '../schema/cell-key.ts';
import { mapsOf, type RigMaps } from '../schema/rig-doc.ts';
import { readMode, readNote, readPosition, readSignature, readUniverse, readWanted } from '../schema/stored.ts';
import { readCards, rereadCards } from './read-cards.ts';
import { createRowSource, type ParsedBlocks, type RowSource } from './row-source.ts';

/** A document read once as a whole, and kept up by what each transaction changed. */
export interface RigIndex {
  readonly rows: RowSource;
  rig(): Rig;
  /** Reads what a transaction changed, and answers with the fixtures that are not the same object any more. */
  follow(transaction: Y.Transaction): readonly FixtureId[];
}

export function createRigIndex(doc: Y.Doc): RigIndex {
  const maps = mapsOf(doc);
  const rows = createRowSource(maps);
  let rig: Rig = Object.freeze({
    fixtures: tableOf(rows.all()),
    modes: readTable(maps.modes, readMode),
    positions: readTable(maps.positions, readPosition),
    universes: readTable(maps.universes, readUniverse),
    notes: readTable(maps.notes, readNote),
    wanted: readTable(maps.wanted, readWanted),
    signatures: readTable(maps.signatures, readSignature),
    cards: readCards(maps.cards),
  });
  return {
    rows,
    rig: () => rig,
    follow({ changed }) {
      const changes = fixtureChanges(rig, maps, rows, changed);
      const next: Rig = {
        fixtures: changes.length === 0 ? rig.fixtures : changeRows(rig.fixtures, changes),
        modes: rereadTable(rig.modes, maps.modes, changed, readMode),
        positions: rereadTable(rig.positions, maps.positions, changed, readPosition),
        universes: rereadTable(rig.universes, maps.universes, changed, readUniverse),
        notes: rereadTable(rig.notes, maps.notes, changed, readNote),
        wanted: rereadTable(rig.wanted, maps.wanted, changed, readWanted),
        signatures: rereadTable(rig.signatures, maps.signatures, changed, readSignature),
        cards: rereadCards(rig.cards, maps.cards, keysOf(changed, maps.cards)),
      };
      if (!sameParts(rig, next)) rig = Object.freeze(next);
      return changes.map((change) => change.id as FixtureId);
    },
  };
}

/** Map or other shared type -> the keys of it that a transaction touched. A list item hidden in a map has the key null. */
type Changed = ReadonlyMap<unknown, ReadonlySet<string | null>>;

function sameParts(a: Rig, b: Rig): boolean {
  return (
    a.fixtures === b.fixtures &&
    a.modes === b.modes &&
    a.positions === b.positions &&
    a.universes === b.universes &&
    a.notes === b.notes &&
    a.wanted === b.wanted &&
    a.signatures === b.signatures &&
    a.cards === b.cards
  );
}

function keysOf(changed: Changed, map: Y.Map<unknown>): string[] {
  return [...(changed.get(map) ?? [])].filter((key) => key !== null);
}

function readTable<Row extends { readonly id: string }>(
  map: Y.Map<unknown>,
  read: (key: string, stored: unknown) => Row | undefined,
): Table<Row> {
  return tableOf([...map].map(([key, stored]) => read(key, stored)).filter((row) => row !== undefined));
}

function rereadTable<Row extends { readonly id: string }>(
  table: Table<Row>,
  map: Y.Map<unknown>,
  changed: Changed,
  read: (key: string, stored: unknown) => Row | undefined,
): Table<Row> {
  const keys = keysOf(changed, map);
  if (keys.length === 0) return table;
  const changes = keys.map((id) => {
    const before = getRow(table, id);
    const row = read(id, map.get(id));
    return { id, row: JSON.stringify(row) === JSON.stringify(before) ? before : row };
  });
  return changeRows(table, changes);
}

/** What became of the rows a transaction touched; a row that reads as before is not among them. */
function fixtureChanges(rig: Rig, maps: RigMaps, rows: RowSource, changed: Changed): RowChange<Fixture>[] {
  const rebuild = touchedRows(maps, rows, changed);
  const patches = touchedCells(maps, changed, rebuild);
  const parsed: ParsedBlocks = new Map();
  const changes: RowChange<Fixture>[] = [];
  const put = (id: FixtureId, before: Fixture | undefined, row: Fixture | undefined) => {
    const same = before === undefined || row === undefined ? before === row : sameFixture(before, row);
    if (!same) changes.push({ id, row });
  };
  for (const id of rebuild) put(id, getRow(rig.fixtures, id), rows.isGone(id) ? undefined : rows.read(id, parsed));
  for (const [id, cells] of patches) {
    const before = getRow(rig.fixtures, id);
    if (before !== undefined && !rebuild.has(id)) put(id, before, readFixture(id, { ...cellsOf(before), ...cells }));
  }
  return changes;
}

/** Rows to be read anew from their block. */
function touchedRows(maps: RigMaps, rows: RowSource, changed: Changed): Set<FixtureId> {
  const touched = new Set<FixtureId>();
  for (const block of keysOf(changed, maps.blocks)) for (const id of rows.blockChanged(block)) touched.add(id);
  for (const key of keysOf(changed, maps.gone)) {
    const id = rows.markChanged(key);
    if (id !== undefined) touched.add(id);
  }
  return touched;
}

/** Cells written over a row, to be laid over the row as it is; where a cell was taken back the row joins `rebuild`. */
function touchedCells(maps: RigMaps, changed: Changed, rebuild: Set<FixtureId>): ReadonlyMap<FixtureId, Cells> {
  const patches = new Map<FixtureId, Cells>();
  for (const key of keysOf(changed, maps.cells)) {
    const place = parseCellKey(key);
    if (place === undefined || rebuild.has(place.fixture)) continue;
    const value = maps.cells.get(key);
    if (value === undefined || !isCellValue(value)) rebuild.add(place.fixture);
    else patches.set(place.fixture, { ...patches.get(place.fixture), [place.field]: value });
  }
  return patches;
}
