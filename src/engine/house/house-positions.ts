import { getRow, rowsOf } from '#base/table.ts';
import { compareNatural } from '../model/natural-order.ts';
import { type Place, recordOf } from '../model/record.ts';
import type { Rig } from '../model/rig.ts';
import { type PositionLoad, positionLoads } from '../supply/position-loads.ts';

/** A position of the house: what hangs there and may hang there, and what the record says of it. */
export interface HousePosition {
  /** Its folded name. */
  readonly key: string;
  readonly name: string;
  /** Where it stands in the order; null: not in it. */
  readonly order: number | null;
  readonly load: PositionLoad;
  readonly place: Place | undefined;
}

/**
 * Every position that is in the order, that units hang at, that the record says something of, or that has a limit: those in the order
 * first, as they stand in it, then the others by name. Units without a position are at none. [HO1]
 */
export function housePositions(rig: Rig): readonly HousePosition[] {
  const { places } = recordOf(rig.cards);
  const loads = new Map(positionLoads(rig).map((load) => [load.key, load] as const));
  const listed = [...rowsOf(rig.positions)].sort((a, b) => a.order - b.order || compareNatural(a.name, b.name));
  const keys = new Set<string>(listed.map(({ id }) => id));
  const others = new Map<string, string>();
  for (const { key, position } of [...places.values(), ...loads.values()]) {
    if (key !== '' && !keys.has(key) && !others.has(key)) others.set(key, position);
  }
  const names = [
    ...listed.map(({ id, name }) => [id as string, name] as const),
    ...[...others].sort(([a], [b]) => compareNatural(a, b)),
  ];
  return names.map(([key, name]) => ({
    key,
    name,
    order: getRow(rig.positions, key)?.order ?? null,
    load: loads.get(key) ?? emptyLoad(key, name),
    place: places.get(key),
  }));
}

const emptyLoad = (key: string, position: string): PositionLoad => ({
  key,
  position,
  units: [],
  kilograms: 0,
  unknown: [],
  limit: undefined,
});
