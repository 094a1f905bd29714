import { rowsOf } from '#base/table.ts';
import { nameKey } from '#engine/model/card.ts';
import type { Fixture } from '#engine/model/fixture.ts';
import { foldName } from '#engine/model/ids.ts';
import { compareNatural } from '#engine/model/natural-order.ts';
import type { Rig } from '#engine/model/rig.ts';
import { compareUnits } from '#engine/network/runs/run-chain.ts';

/** Which units are asked for; null: whichever. Folded. */
export interface UnitFilter {
  readonly position: string | null;
  readonly type: string | null;
}

/** The units on no run, as they hang. */
export const freeUnits = (rig: Rig): readonly Fixture[] =>
  [...rowsOf(rig.fixtures)].filter(({ run }) => nameKey(run) === '').sort(compareUnits);

export const fits = ({ position, type }: UnitFilter, unit: Fixture): boolean =>
  (position === null || foldName(unit.position) === position) && (type === null || foldName(unit.type) === type);

/** The names that some units have in a cell, each once as it is first written, by folded name in natural order. */
export function namesIn(units: readonly Fixture[], cell: 'position' | 'type'): readonly (readonly [string, string])[] {
  const names = new Map<string, string>();
  for (const unit of units) if (!names.has(foldName(unit[cell]))) names.set(foldName(unit[cell]), unit[cell].trim());
  return [...names].sort(([a], [b]) => compareNatural(a, b));
}
