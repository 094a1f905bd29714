import { getRow } from '#base/table.ts';
import { modeOf } from '../model/find-mode.ts';
import type { Fixture } from '../model/fixture.ts';
import { positionId } from '../model/ids.ts';
import { type Limit, plantOf } from '../model/plant.ts';
import type { Rig } from '../model/rig.ts';
import { byPlace } from '../sheet/sheet-order.ts';
import { exactSum, type ModedUnit, physicalOf, weightOf } from './stated.ts';

/** What hangs at one position, as far as its units' types state it: units alone, without clamps, cable or the pipe. */
export interface PositionLoad extends PositionWeight {
  /** Its folded name; empty for units that name none. */
  readonly key: string;
  /** As the rig lists it, else as its first unit or its limit writes it. */
  readonly position: string;
  /** By their numbers. */
  readonly units: readonly WeighedUnit[];
  /** What it may hold, by the word of somebody; undefined while nobody said. */
  readonly limit: Limit | undefined;
}

interface WeighedUnit {
  readonly fixture: Fixture;
  /** As its type states it; null where it does not. */
  readonly kilograms: number | null;
}

/** What units at one position weigh together. */
export interface PositionWeight {
  /** Of the units whose weight is known. */
  readonly kilograms: number;
  /** Units whose type does not state its weight: they are in no figure. */
  readonly unknown: readonly Fixture[];
}

/** [SU7] */
export function weightOfUnits(units: Iterable<ModedUnit>): PositionWeight {
  const known: number[] = [];
  const unknown: Fixture[] = [];
  for (const unit of units) {
    const weight = weightOf(physicalOf(unit));
    if (weight === null) unknown.push(unit.fixture);
    else known.push(weight);
  }
  return { kilograms: exactSum(known), unknown };
}

/** Positions in the rig's order, then those it does not list by name, those that only have a limit, units that name none last. [SU7] */
export function positionLoads(rig: Rig): readonly PositionLoad[] {
  const { limits } = plantOf(rig.cards);
  const groups = new Map<string, Fixture[]>();
  const nowhere: Fixture[] = [];
  for (const fixture of byPlace(rig)) {
    const id = positionId(fixture.position);
    const group = id === '' ? nowhere : groups.get(id);
    if (group === undefined) groups.set(id, [fixture]);
    else group.push(fixture);
  }
  for (const key of limits.keys()) if (!groups.has(key)) groups.set(key, []);
  if (nowhere.length > 0) groups.set('', nowhere);
  return [...groups].map(([key, fixtures]) => {
    const moded = fixtures.map((fixture) => ({ fixture, mode: modeOf(rig, fixture) }));
    const limit = key === '' ? undefined : limits.get(key);
    return {
      ...weightOfUnits(moded),
      key,
      position: getRow(rig.positions, key)?.name ?? fixtures[0]?.position.trim() ?? limit?.position ?? '',
      units: moded.map((unit) => ({ fixture: unit.fixture, kilograms: weightOf(physicalOf(unit)) })),
      limit,
    };
  });
}

/** Kilograms there with what hangs there that is no unit. */
export const heldBy = ({ kilograms, limit }: Pick<PositionLoad, 'kilograms' | 'limit'>): number =>
  kilograms + (limit?.extra ?? 0);
