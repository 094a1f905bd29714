import * as Y from 'yjs';
import { getRow, type Table } from '#base/table.ts';
import { type Card, type CardEdit, cardId } from '#engine/model/card.ts';
import type { Edit } from '#engine/model/edit.ts';
import { FIELDS } from '#engine/model/field.ts';
import type { Fixture } from '#engine/model/fixture.ts';
import { type FixtureId, foldName, modeId, positionId } from '#engine/model/ids.ts';
import { cellOf, cellsOf } from '#engine/model/read-fixture.ts';
import type { Rig } from '#engine/model/rig.ts';
import type { Reading } from '../read/rig-reader.ts';
import type { ParsedBlocks } from '../read/row-source.ts';
import { BLOCK_ROWS, packBlock } from '../schema/block.ts';
import { cardCellKey } from '../schema/card-key.ts';
import { cellKey } from '../schema/cell-key.ts';
import { goneKey } from '../schema/gone-key.ts';
import type { RigMaps } from '../schema/rig-doc.ts';
import { storeMode, storeNote, storePosition, storeSignature, storeUniverse, storeWanted } from '../schema/stored.ts';
import { seenCells } from './seen-cells.ts';

/** Writes into a document what `after` says and its reading does not, of all that `edits` name. Within one transaction. */
export function writeDifference(doc: Y.Doc, maps: RigMaps, reading: Reading, after: Rig, edits: readonly Edit[]): void {
  const before = reading.rig();
  writeFixtures(doc, maps, reading, after.fixtures, namedFixtures(edits));
  const named = namedRows(edits);
  writeRows(maps.modes, before.modes, after.modes, named.modes, storeMode);
  writeRows(maps.positions, before.positions, after.positions, named.positions, storePosition);
  writeRows(maps.universes, before.universes, after.universes, named.universes, storeUniverse);
  writeRows(maps.notes, before.notes, after.notes, named.notes, storeNote);
  writeRows(maps.wanted, before.wanted, after.wanted, named.wanted, storeWanted);
  writeRows(maps.signatures, before.signatures, after.signatures, named.signatures, storeSignature);
  for (const edit of edits) if (edit.kind === 'set-card') writeCardCell(maps.cards, before.cards, after.cards, edit);
}

function namedFixtures(edits: readonly Edit[]): ReadonlySet<FixtureId> {
  const ids = new Set<FixtureId>();
  for (const edit of edits) if ('fixture' in edit) ids.add(edit.fixture);
  return ids;
}

function namedRows(edits: readonly Edit[]) {
  const named = {
    modes: new Set<string>(),
    positions: new Set<string>(),
    universes: new Set<string>(),
    notes: new Set<string>(),
    wanted: new Set<string>(),
    signatures: new Set<string>(),
  };
  for (const edit of edits) {
    if (edit.kind === 'set-mode' || edit.kind === 'remove-mode') named.modes.add(modeId(edit.type, edit.mode));
    else if (edit.kind === 'set-position' || edit.kind === 'remove-position')
      named.positions.add(positionId(edit.name));
    else if (edit.kind === 'set-universe') named.universes.add(String(edit.universe));
    else if (edit.kind === 'set-note' || edit.kind === 'remove-note') named.notes.add(edit.note);
    else if (edit.kind === 'set-wanted') named.wanted.add(foldName(edit.type));
    else if (edit.kind === 'set-signature') named.signatures.add(edit.hazard);
  }
  return named;
}

function writeRows<Row extends { readonly id: string }>(
  map: Y.Map<unknown>,
  before: Table<Row>,
  after: Table<Row>,
  named: ReadonlySet<string>,
  store: (row: Row) => unknown,
): void {
  for (const id of named) {
    const old = getRow(before, id);
    const row = getRow(after, id);
    if (row === undefined) {
      if (old !== undefined) map.delete(id);
    } else if (old === undefined || JSON.stringify(store(old)) !== JSON.stringify(store(row))) map.set(id, store(row));
  }
}

function writeCardCell(map: Y.Map<unknown>, before: Table<Card>, after: Table<Card>, edit: CardEdit): void {
  const id = cardId(edit.card, edit.key);
  const value = getRow(after, id)?.cells[edit.field] ?? null;
  const cellKey = cardCellKey(edit);
  // Of several edits of one cell the first has written it.
  if (value === (getRow(before, id)?.cells[edit.field] ?? null) || map.get(cellKey) === value) return;
  if (value === null) map.delete(cellKey);
  else map.set(cellKey, value);
}

function writeFixtures(
  doc: Y.Doc,
  maps: RigMaps,
  reading: Reading,
  after: Table<Fixture>,
  named: ReadonlySet<FixtureId>,
): void {
  const before = reading.rig().fixtures;
  const parsed: ParsedBlocks = new Map();
  const fresh: Fixture[] = [];
  for (const id of named) {
    const old = getRow(before, id);
    const row = getRow(after, id);
    if (row === undefined) {
      if (old !== undefined) maps.gone.set(goneKey(id, doc.clientID), seenCells(maps, id));
      continue;
    }
    if (old === undefined) for (const mark of reading.rows.marksOf(id)) maps.gone.delete(mark);
    const stored = old ?? reading.rows.read(id, parsed);
    if (stored === undefined) fresh.push(row);
    else writeCells(maps, stored, row);
  }
  writeBlocks(doc, maps, fresh);
}

function writeCells(maps: RigMaps, stored: Fixture, row: Fixture): void {
  if (stored === row) return;
  for (const field of FIELDS) {
    const value = cellOf(row, field);
    if (value !== cellOf(stored, field)) maps.cells.set(cellKey(row.id, field), value);
  }
}

function writeBlocks(doc: Y.Doc, maps: RigMaps, rows: readonly Fixture[]): void {
  for (let from = 0; from < rows.length; from += BLOCK_ROWS) {
    const some = rows.slice(from, from + BLOCK_ROWS);
    // Cells left behind by a row of this id that was taken back would show through the new row.
    for (const { id } of some) for (const field of FIELDS) maps.cells.delete(cellKey(id, field));
    // The place this item takes in the document's history: nobody else can ever make the same name.
    const block = `${doc.clientID}-${Y.getState(doc.store, doc.clientID)}`;
    maps.blocks.set(block, packBlock(some.map((row) => ({ id: row.id, cells: cellsOf(row) }))));
  }
}
