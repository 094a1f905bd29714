import { ok, type Result, refuse } from '#base/result.ts';
import { createOccupancy, type OccupancyIndex } from '../../address/occupancy-index.ts';
import type { Universe } from '../../model/address.ts';
import type { Plan } from '../../model/edit.ts';
import type { FixtureId } from '../../model/ids.ts';
import { isLocked } from '../../model/locked.ts';
import type { Rig } from '../../model/rig.ts';
import { chosen, planOf } from '../chosen.ts';
import type { PlanRefusal } from '../plan-refusal.ts';
import { type AllocateOptions, fullOptions } from './allocate-options.ts';
import { type Block, blocksOf } from './block.ts';
import { cellsOf } from './bundle.ts';
import { Ground } from './ground.ts';
import { editsOf, type Laid } from './laid.ts';
import { layInOrder } from './lay-in-order.ts';
import { boundsOf, layPacked, type Packed } from './lay-packed.ts';
import type { ProvenBounds } from './lower-bounds.ts';

export interface Allocation {
  readonly plan: Plan;
  /** Where the chosen come to lie, ascending. */
  readonly universes: readonly Universe[];
  /** How many of these nobody else uses. */
  readonly opened: number;
  /** No placing that keeps together what fits into one universe opens fewer. */
  readonly bounds: ProvenBounds;
  /** How many best-fit-decreasing would open; not asked of an order that is kept. */
  readonly bestFit: number | null;
  /** Positions or types, as written, that do not lie in one run. */
  readonly split: readonly string[];
}

/**
 * Places the chosen fixtures into free slots so that few universes are opened, as asked. What they held counts as free; what
 * is not chosen stays where it is. Fixtures that act as one stay so. Never overlaps, never crosses slot 512. [PL20] [PL21]
 */
export function allocatePlan(
  rig: Rig,
  ids: readonly FixtureId[],
  options: Partial<AllocateOptions> = {},
  index: OccupancyIndex = createOccupancy(rig),
): Result<Allocation, PlanRefusal> {
  const full = fullOptions(options);
  if (!full.ok) return full;
  const fixtures = chosen(rig, ids);
  if (!fixtures.ok) return fixtures;
  const blocks = blocksOf(rig, fixtures.value, full.value);
  if (!blocks.ok) return blocks;
  const held = fixtures.value.filter(isLocked).map(({ id }) => id);
  if (blocks.value.length === 0 && held.length > 0) return refuse({ code: 'held', fixtures: held.sort() });
  const moving = new Set(blocks.value.flatMap(({ party }) => party.fixtures.map(({ id }) => id)));
  return allocation(rig, blocks.value, new Ground(index, moving, full.value), full.value);
}

function allocation(
  rig: Rig,
  blocks: readonly Block[],
  ground: Ground,
  options: AllocateOptions,
): Result<Allocation, PlanRefusal> {
  const packed =
    options.together === 'in-order' ? ordered(blocks, ground, options) : layPacked(blocks, ground, options);
  if (!('laid' in packed)) return refuse({ code: 'no-room', fixture: packed.party.lead.id, slots: packed.slots });
  const plan = planOf(rig, 'allocate', editsOf(blocks, packed.laid));
  if (!plan.ok) return plan;
  const universes = [...new Set(packed.laid.map(({ universe }) => universe))].sort((a, b) => a - b);
  const { bounds, bestFit, split } = packed;
  const opened = universes.filter((universe) => !ground.isUsed(universe)).length;
  return ok({ plan: plan.value, universes, opened, bounds, bestFit, split });
}

interface Placed extends Omit<Packed, 'bestFit'> {
  readonly laid: readonly Laid[];
  readonly bestFit: number | null;
}

function ordered(blocks: readonly Block[], ground: Ground, options: AllocateOptions): Placed | Block {
  const laid = layInOrder(blocks, ground, options.grid);
  if (!Array.isArray(laid)) return laid as Block;
  const widths = blocks.map(({ slots }) => cellsOf(slots, options.grid));
  const opened = new Set(laid.map(({ universe }) => universe).filter((universe) => !ground.isUsed(universe))).size;
  return { laid, split: [], bounds: boundsOf(widths, ground, { options, opened }), bestFit: null };
}
