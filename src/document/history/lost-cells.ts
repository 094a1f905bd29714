import * as Y from 'yjs';
import type { Clock } from '#base/clock.ts';
import { type CellValue, FIELDS, type Field } from '#engine/model/field.ts';
import type { Fixture } from '#engine/model/fixture.ts';
import type { FixtureId } from '#engine/model/ids.ts';
import { heldBy, type KeyChange, keyChanges } from '../read/key-changes.ts';
import { readingOf } from '../read/rig-reader.ts';
import { isCellValue } from '../schema/block.ts';
import { cellKey, parseCellKey } from '../schema/cell-key.ts';
import { parseGoneKey } from '../schema/gone-key.ts';
import { mapsOf, type RigMaps } from '../schema/rig-doc.ts';

/** A cell that two people set at once, and whose value of mine did not stay. */
export interface LostCell {
  readonly fixture: FixtureId;
  readonly field: Field;
  readonly mine: CellValue;
  readonly theirs: CellValue;
  /** When it was noticed here, milliseconds since 1970. */
  readonly at: number;
}

/** A row that somebody removed who had not seen what I wrote into it at the same time. */
export interface LostRow {
  readonly fixture: FixtureId;
  /** The row as it stood here. */
  readonly row: Fixture;
  /** What I wrote and they had not seen. */
  readonly fields: readonly Field[];
  readonly at: number;
}

export interface LostCells {
  onLost(listen: (lost: readonly LostCell[]) => void): () => void;
  onLostRow(listen: (lost: readonly LostRow[]) => void): () => void;
  close(): void;
}

/**
 * Tells when a value of mine lost to one that was written at the same time. `mine` knows the client ids of this device,
 * earlier sessions included. An overwrite by somebody who had my value before them is an ordinary edit and is not told, nor
 * is a loss to the same value. Cells of fixtures only.
 *
 * How it is known: every entry of a Yjs map remembers the entry it was written over (`origin`), and that one the one before.
 * Who had my entry before them wrote over it, or over an entry that was written over it: it is in that chain. When mine stood
 * and what stands now does not have it in its chain, they were written at the same time. For a removed row, the mark itself
 * lists the cells its remover had seen.
 */
export function watchLostCells(doc: Y.Doc, mine: (client: number) => boolean, clock: Pick<Clock, 'now'>): LostCells {
  const maps = mapsOf(doc);
  // The index is made first, so that it has followed a transaction before it is asked about it below.
  readingOf(doc);
  const cellListeners = new Set<(lost: readonly LostCell[]) => void>();
  const rowListeners = new Set<(lost: readonly LostRow[]) => void>();
  const follow = (transaction: Y.Transaction) => {
    if (transaction.local) return;
    const at = clock.now();
    const cells = keyChanges(transaction, maps.cells)
      .map((change) => lostCell(doc, change, mine, at))
      .filter((cell) => cell !== undefined);
    if (cells.length > 0) for (const listen of [...cellListeners]) listen(cells);
    const rows = lostRows(doc, keyChanges(transaction, maps.gone), mine, at);
    if (rows.length > 0) for (const listen of [...rowListeners]) listen(rows);
  };
  doc.on('afterTransaction', follow);
  return {
    onLost(listen) {
      cellListeners.add(listen);
      return () => cellListeners.delete(listen);
    },
    onLostRow(listen) {
      rowListeners.add(listen);
      return () => rowListeners.delete(listen);
    },
    close() {
      doc.off('afterTransaction', follow);
      cellListeners.clear();
      rowListeners.clear();
    },
  };
}

function lostCell(
  doc: Y.Doc,
  { key, before, after }: KeyChange,
  mine: (client: number) => boolean,
  at: number,
): LostCell | undefined {
  const place = parseCellKey(key);
  if (place === undefined || before === undefined || after === undefined) return undefined;
  if (!mine(before.id.client) || mine(after.id.client) || isWrittenOver(doc, after, before.lastId)) return undefined;
  const [my, their] = [heldBy(before), heldBy(after)];
  if (!isCellValue(my) || !isCellValue(their) || my === their) return undefined;
  return Object.freeze({ ...place, mine: my, theirs: their, at });
}

/** Whether `target` is in the chain of entries that `item` was written over. Yjs joins neighbours of one client into one item. */
function isWrittenOver(doc: Y.Doc, item: Y.Item, target: Y.ID): boolean {
  let over = item.origin;
  while (over !== null) {
    const found = Y.getItem(doc.store, over);
    const { client, clock } = found.id;
    if (client === target.client && target.clock >= clock && target.clock <= over.clock) return true;
    if (!(found instanceof Y.Item)) return false;
    over = found.origin;
  }
  return false;
}

function lostRows(
  doc: Y.Doc,
  changes: readonly KeyChange[],
  mine: (client: number) => boolean,
  at: number,
): readonly LostRow[] {
  const { rows } = readingOf(doc);
  const lost: LostRow[] = [];
  const newMarks = new Set(changes.filter(({ before }) => before === undefined).map(({ key }) => key));
  const told = new Set<FixtureId>();
  for (const { key, before, after } of changes) {
    const fixture = parseGoneKey(key);
    if (fixture === undefined || told.has(fixture) || before !== undefined || after === undefined) continue;
    if (mine(after.id.client) || rows.marksOf(fixture).some((mark) => !newMarks.has(mark))) continue;
    const fields = unseenFields(mapsOf(doc), fixture, heldBy(after), mine);
    const row = fields.length === 0 ? undefined : rows.read(fixture, new Map());
    if (row === undefined) continue;
    told.add(fixture);
    lost.push(Object.freeze({ fixture, row, fields, at }));
  }
  return lost;
}

function unseenFields(
  maps: RigMaps,
  fixture: FixtureId,
  seen: unknown,
  mine: (client: number) => boolean,
): readonly Field[] {
  const pairs: readonly unknown[] = Array.isArray(seen) ? seen : [];
  const isSeen = ({ client, clock }: Y.ID) =>
    pairs.some((one, i) => i % 2 === 0 && one === client && pairs[i + 1] === clock);
  return FIELDS.filter((field) => {
    const item = maps.cells._map.get(cellKey(fixture, field));
    return item !== undefined && !item.deleted && mine(item.id.client) && !isSeen(item.lastId);
  });
}
