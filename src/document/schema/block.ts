import { type CellValue, FIELDS, type Field } from '#engine/model/field.ts';
import type { Cells } from '#engine/model/fixture.ts';
import { type FixtureId, isId } from '#engine/model/ids.ts';

/** Rows in one block, at most, so that reading one row again never parses more than this many. */
export const BLOCK_ROWS = 256;

export interface BlockRow {
  readonly id: FixtureId;
  readonly cells: Cells;
}

/** Rows as the text a block holds: a JSON array of tuples `[id, …cells in FIELDS order]` without trailing nulls. */
export function packBlock(rows: readonly BlockRow[]): string {
  return JSON.stringify(rows.map(packRow));
}

function packRow({ id, cells }: BlockRow): readonly CellValue[] {
  const tuple: CellValue[] = [id, ...FIELDS.map((field) => cells[field] ?? null)];
  while (tuple.length > 1 && tuple[tuple.length - 1] === null) tuple.pop();
  return tuple;
}

/**
 * The rows of a block. Total: text that is no JSON array holds no rows, an entry that is no tuple led by an id is passed over,
 * a value that is no cell reads as empty, values past the fields this version knows are passed over.
 */
export function unpackBlock(stored: unknown): readonly BlockRow[] {
  const entries = typeof stored === 'string' ? parseJson(stored) : undefined;
  if (!Array.isArray(entries)) return [];
  const rows: BlockRow[] = [];
  for (const entry of entries) {
    if (!Array.isArray(entry)) continue;
    const id: unknown = entry[0];
    if (typeof id === 'string' && isId(id)) rows.push({ id: id as FixtureId, cells: unpackCells(entry) });
  }
  return rows;
}

function parseJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    // Not a block that this code wrote: it holds no rows, and what it holds stays in the document.
    return undefined;
  }
}

function unpackCells(tuple: readonly unknown[]): Cells {
  const cells: Partial<Record<Field, CellValue>> = {};
  for (let i = 0; i < FIELDS.length; i++) {
    const value = tuple[i + 1];
    if (value !== null && isCellValue(value)) cells[FIELDS[i] as Field] = value;
  }
  return cells;
}

export function isCellValue(value: unknown): value is CellValue {
  return value === null || typeof value === 'string' || (typeof value === 'number' && Number.isFinite(value));
}
