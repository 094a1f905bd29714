import { type CellValue, FIELDS, type Field } from '#engine/model/field.ts';
import type { Cells, Fixture } from '#engine/model/fixture.ts';
import type { FixtureId } from '#engine/model/ids.ts';
import { readFixture } from '#engine/model/read-fixture.ts';
import { isCellValue, unpackBlock } from '../schema/block.ts';
import { cellKey, parseCellKey } from '../schema/cell-key.ts';
import { parseGoneKey } from '../schema/gone-key.ts';
import type { RigMaps } from '../schema/rig-doc.ts';

/** Blocks read during one pass over a document, so that each is parsed once: block id -> its rows by fixture. */
export type ParsedBlocks = Map<string, ReadonlyMap<FixtureId, Cells>>;

/** Knows which block holds which row and which rows are marked as gone, and makes a row of what a document says of it. */
export interface RowSource {
  /** Every row that is there. */
  all(): Fixture[];
  /** Reads a block anew after it changed, and answers with every row it held or holds. */
  blockChanged(block: string): Iterable<FixtureId>;
  /** Reads a mark anew after it changed, and answers with the row it names. */
  markChanged(key: string): FixtureId | undefined;
  isGone(id: FixtureId): boolean;
  /** The keys of the marks on a row. */
  marksOf(id: FixtureId): readonly string[];
  /** The row as its block and cells have it, be it gone or not; undefined when no block holds it. */
  read(id: FixtureId, parsed: ParsedBlocks): Fixture | undefined;
}

const NO_KEYS: readonly string[] = Object.freeze([]);

export function createRowSource(maps: RigMaps): RowSource {
  const idsOfBlock = new Map<string, readonly FixtureId[]>();
  // Nearly every row is in one block: a list is kept only for a row that several blocks hold.
  const holders = new Map<FixtureId, string | readonly string[]>();
  const marks = new Map<FixtureId, Set<string>>();

  const holdersOf = (id: FixtureId): readonly string[] => {
    const held = holders.get(id) ?? NO_KEYS;
    return typeof held === 'string' ? [held] : held;
  };
  const setHolders = (id: FixtureId, blocks: readonly string[]) => {
    if (blocks.length === 0) holders.delete(id);
    else holders.set(id, blocks.length === 1 ? (blocks[0] as string) : blocks);
  };
  const parse = (block: string, parsed: ParsedBlocks) => {
    const known = parsed.get(block);
    if (known !== undefined) return known;
    const rows = rowsById(maps.blocks.get(block));
    parsed.set(block, rows);
    return rows;
  };
  const take = (block: string, ids: readonly FixtureId[]) => {
    if (ids.length > 0) idsOfBlock.set(block, ids);
    for (const id of ids) {
      if (holders.has(id)) setHolders(id, [...holdersOf(id), block].sort());
      else holders.set(id, block);
    }
  };
  const markChanged = (key: string) => {
    const id = parseGoneKey(key);
    if (id === undefined) return undefined;
    const keys = marks.get(id) ?? new Set();
    if (maps.gone.has(key)) keys.add(key);
    else keys.delete(key);
    if (keys.size > 0) marks.set(id, keys);
    else marks.delete(id);
    return id;
  };

  return {
    all() {
      for (const key of maps.gone.keys()) markChanged(key);
      const over = overridesOf(maps);
      const rows: Fixture[] = [];
      for (const block of [...maps.blocks.keys()].sort()) {
        const held = rowsById(maps.blocks.get(block));
        for (const [id, cells] of held) {
          if (holders.has(id) || marks.has(id)) continue;
          const changed = over.get(id);
          rows.push(readFixture(id, changed === undefined ? cells : { ...cells, ...changed }));
        }
        take(block, [...held.keys()]);
      }
      return rows;
    },
    blockChanged(block) {
      const before = idsOfBlock.get(block) ?? [];
      for (const id of before) {
        setHolders(
          id,
          holdersOf(id).filter((holder) => holder !== block),
        );
      }
      idsOfBlock.delete(block);
      const after = [...rowsById(maps.blocks.get(block)).keys()];
      take(block, after);
      return new Set([...before, ...after]);
    },
    markChanged,
    isGone: (id) => marks.has(id),
    marksOf: (id) => [...(marks.get(id) ?? NO_KEYS)],
    read(id, parsed) {
      const block = holdersOf(id)[0];
      if (block === undefined) return undefined;
      return readFixture(id, { ...parse(block, parsed).get(id), ...overridesOfRow(maps, id) });
    },
  };
}

/** The first of two rows of one id counts. */
function rowsById(stored: unknown): Map<FixtureId, Cells> {
  const rows = new Map<FixtureId, Cells>();
  for (const { id, cells } of unpackBlock(stored)) if (!rows.has(id)) rows.set(id, cells);
  return rows;
}

type Overrides = Partial<Record<Field, CellValue>>;

function overridesOf(maps: RigMaps): ReadonlyMap<FixtureId, Overrides> {
  const byRow = new Map<FixtureId, Overrides>();
  maps.cells.forEach((value, key) => {
    const place = parseCellKey(key);
    if (place === undefined || !isCellValue(value)) return;
    const row = byRow.get(place.fixture) ?? {};
    row[place.field] = value;
    byRow.set(place.fixture, row);
  });
  return byRow;
}

function overridesOfRow(maps: RigMaps, id: FixtureId): Overrides {
  const row: Overrides = {};
  for (const field of FIELDS) {
    const value = maps.cells.get(cellKey(id, field));
    if (value !== undefined && isCellValue(value)) row[field] = value;
  }
  return row;
}
