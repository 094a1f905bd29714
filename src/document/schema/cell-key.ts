import { FIELDS, type Field } from '#engine/model/field.ts';
import { type FixtureId, isId } from '#engine/model/ids.ts';

const KNOWN: ReadonlySet<string> = new Set(FIELDS);

/** Where a document keeps a cell that was written after its row. An id holds no `/`, so the key reads one way only. */
export const cellKey = (fixture: FixtureId, field: Field): string => `${fixture}/${field}`;

export interface CellPlace {
  readonly fixture: FixtureId;
  readonly field: Field;
}

/** Undefined for a key that names no cell this version knows. */
export function parseCellKey(key: string): CellPlace | undefined {
  const slash = key.indexOf('/');
  const fixture = key.slice(0, Math.max(slash, 0));
  const field = key.slice(slash + 1);
  if (!KNOWN.has(field) || !isId(fixture)) return undefined;
  return { fixture: fixture as FixtureId, field: field as Field };
}
