import type { Fixture } from '../../model/fixture.ts';
import { type FixtureId, type PositionId, positionId } from '../../model/ids.ts';

export interface RepairOptions {
  /** What it costs to move a unit that hangs at a position, above 0; 1 where nothing is said. */
  readonly positionCosts: ReadonlyMap<PositionId, number>;
  /** Units that are set already: moving one means setting it a second time. */
  readonly alreadySet: ReadonlySet<FixtureId>;
  /** What moving a unit that is set costs on top, 0 or more. */
  readonly setCost: number;
  /** How much work may be spent on units with several breaks. */
  readonly steps: number;
}

export const REPAIR_DEFAULTS: RepairOptions = {
  positionCosts: new Map(),
  alreadySet: new Set(),
  setCost: 1,
  steps: 1_000_000,
};

/** What it costs to move one unit. */
export function costOf({ id, position }: Fixture, { positionCosts, alreadySet, setCost }: RepairOptions): number {
  return (positionCosts.get(positionId(position)) ?? 1) + (alreadySet.has(id) ? setCost : 0);
}

/** The number among the options that is no cost, if any. */
export function badCost({ positionCosts, setCost }: RepairOptions): number | undefined {
  const isCost = (cost: number) => cost > 0 && cost < 1e9;
  return (
    [...positionCosts.values()].find((cost) => !isCost(cost)) ??
    (setCost === 0 || isCost(setCost) ? undefined : setCost)
  );
}
