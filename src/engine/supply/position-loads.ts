import { getRow } from '#base/table.ts';
import { modeOf } from '../model/find-mode.ts';
import type { Fixture } from '../model/fixture.ts';
import { positionId } from '../model/ids.ts';
import type { Rig } from '../model/rig.ts';
import { byPlace } from '../sheet/sheet-order.ts';

/** What hangs at one position, as far as its units' types state it: units alone, without clamps, cable or the pipe. */
export interface PositionLoad {
  /** As the rig lists it, else as its first unit writes it; empty for units that name none. */
  readonly position: string;
  /** By their numbers. */
  readonly units: readonly WeighedUnit[];
  /** Of the units whose weight is known. */
  readonly kilograms: number;
  /** Units whose type does not state its weight: they are in no figure. */
  readonly unknown: readonly Fixture[];
}

interface WeighedUnit {
  readonly fixture: Fixture;
  /** As its type states it; null where it does not. */
  readonly kilograms: number | null;
}

/** Positions in the rig's order, then those it does not list by name, units that name none last. [SU7] */
export function positionLoads(rig: Rig): readonly PositionLoad[] {
  const groups = new Map<string, WeighedUnit[]>();
  for (const fixture of byPlace(rig)) {
    const unit = { fixture, kilograms: weightOf(rig, fixture) };
    const id = positionId(fixture.position);
    const group = groups.get(id);
    if (group === undefined) groups.set(id, [unit]);
    else group.push(unit);
  }
  return [...groups].map(([id, units]) => ({
    position: getRow(rig.positions, id)?.name ?? units[0]?.fixture.position.trim() ?? '',
    units,
    kilograms: units.reduce((sum, { kilograms }) => sum + (kilograms ?? 0), 0),
    unknown: units.filter(({ kilograms }) => kilograms === null).map(({ fixture }) => fixture),
  }));
}

/** A figure of a file that cannot be one is as good as none. */
function weightOf(rig: Rig, fixture: Fixture): number | null {
  const weight = modeOf(rig, fixture)?.pin?.type.physical.weight ?? null;
  return weight !== null && Number.isFinite(weight) && weight > 0 ? weight : null;
}
