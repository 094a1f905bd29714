import { ok } from '#base/result.ts';
import { getRow } from '#base/table.ts';
import type { FixtureId } from '#engine/model/ids.ts';
import type { Rig } from '#engine/model/rig.ts';
import type { AllocateOptions } from '#engine/patch/allocate/allocate-options.ts';
import { type Allocation, allocatePlan } from '#engine/patch/allocate/allocate-plan.ts';
import { costOf, REPAIR_DEFAULTS, type RepairOptions } from '#engine/patch/repair/repair-options.ts';
import { type Repair, repairPlan } from '#engine/patch/repair/repair-plan.ts';
import { allocationSentences, repairSentences } from '#words/packing.ts';
import type { Sheet } from './sheet.ts';
import { showTold } from './show-plan.ts';

/** Shows where the rows would find room, and what is known of how few universes that takes. */
export function showAllocation(sheet: Sheet, rows: readonly FixtureId[], options: Partial<AllocateOptions>): void {
  const { store } = sheet;
  const made = allocatePlan(store.rig(), rows, options, store.occupancy());
  const told = (value: Allocation) => ({ plan: value.plan, says: allocationSentences(value), costs: undefined });
  showTold(sheet, made.ok ? ok(told(made.value)) : made);
}

/** Shows what clears every clash, with what moving each unit costs. */
export function showRepair(sheet: Sheet, options: Partial<RepairOptions>): void {
  const { store } = sheet;
  const rig = store.rig();
  const made = repairPlan(rig, options, store.occupancy());
  const told = (value: Repair) => ({
    plan: value.plan,
    says: repairSentences(value, rig),
    costs: costsOf(rig, value, { ...REPAIR_DEFAULTS, ...options }),
  });
  showTold(sheet, made.ok ? ok(told(made.value)) : made);
}

function costsOf(rig: Rig, { moves }: Repair, options: RepairOptions): ReadonlyMap<FixtureId, number> {
  const costs = new Map<FixtureId, number>();
  for (const id of moves.flatMap(({ fixtures }) => fixtures)) {
    const fixture = getRow(rig.fixtures, id);
    if (fixture !== undefined) costs.set(id, costOf(fixture, options));
  }
  return costs;
}
