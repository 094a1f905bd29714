import { FIELDS } from '#engine/model/field.ts';
import type { FixtureId } from '#engine/model/ids.ts';
import { cellKey } from '../schema/cell-key.ts';
import type { RigMaps } from '../schema/rig-doc.ts';

/**
 * What the remover of a row has seen of its cells: client and clock of each cell written after the row, one after the other.
 * Whoever wrote a cell that is not among them can be told that the row was removed under their hands.
 */
export function seenCells(maps: RigMaps, id: FixtureId): number[] {
  const seen: number[] = [];
  for (const field of FIELDS) {
    const item = maps.cells._map.get(cellKey(id, field));
    if (item !== undefined && !item.deleted) seen.push(item.lastId.client, item.lastId.clock);
  }
  return seen;
}
