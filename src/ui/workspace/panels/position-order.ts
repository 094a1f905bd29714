import { rowsOf } from '#base/table.ts';
import type { Edit, Plan } from '#engine/model/edit.ts';
import { positionId } from '#engine/model/ids.ts';
import { compareNatural } from '#engine/model/natural-order.ts';
import type { Position, Rig } from '#engine/model/rig.ts';

/** The positions of a rig in their order. */
export function positionsInOrder(rig: Rig): readonly Position[] {
  return [...rowsOf(rig.positions)].sort((a, b) => a.order - b.order || compareNatural(a.name, b.name));
}

/** How many units hang at each position, by its key; and how those typed in rows only are spelt. */
export interface PositionsInUse {
  readonly units: ReadonlyMap<string, number>;
  readonly unlisted: readonly string[];
}

export function positionsInUse(rig: Rig): PositionsInUse {
  const listed = new Set<string>([...rowsOf(rig.positions)].map(({ id }) => id));
  const units = new Map<string, number>();
  const spelling = new Map<string, string>();
  for (const { position } of rowsOf(rig.fixtures)) {
    const key = positionId(position);
    if (key === '') continue;
    units.set(key, (units.get(key) ?? 0) + 1);
    if (!listed.has(key) && !spelling.has(key)) spelling.set(key, position);
  }
  return { units, unlisted: [...spelling.values()].sort(compareNatural) };
}

/** Puts the positions in exactly this order; only those that stand elsewhere are written. */
export function orderPositions(rig: Rig, names: readonly string[]): Plan {
  const now = new Map<string, number>(positionsInOrder(rig).map(({ id, order }) => [id, order]));
  const edits = names.flatMap((name, order): Edit[] =>
    now.get(positionId(name)) === order ? [] : [{ kind: 'set-position', name, order }],
  );
  return { name: 'set-position', edits };
}

/** Gives a position another name, in its place in the order and on every unit that hangs there. */
export function renamePosition(rig: Rig, { id, name, order }: Position, to: string): Plan {
  const edits: Edit[] = [];
  if (positionId(to) !== id) edits.push({ kind: 'remove-position', name });
  edits.push({ kind: 'set-position', name: to, order });
  for (const fixture of rowsOf(rig.fixtures)) {
    if (positionId(fixture.position) !== id) continue;
    edits.push({ kind: 'set-cell', fixture: fixture.id, field: 'position', value: to });
  }
  return { name: 'set-position', edits };
}
