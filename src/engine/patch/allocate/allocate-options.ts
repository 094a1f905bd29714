import { ok, type Result, refuse } from '#base/result.ts';
import type { UniverseRange } from '../../address/universe-ranges.ts';
import { SLOTS } from '../../model/address.ts';
import type { PlanRefusal } from '../plan-refusal.ts';
import { PACK_STEPS } from './pack-bins.ts';

export interface AllocateOptions {
  /** Whether the breaks of a fixture lie end to end in one universe, or each where it fits. */
  readonly breaks: 'in-one-universe' | 'anywhere';
  /**
   * What stays together: nothing, so that the fewest universes are opened; the units of a position, of a run (in its order), or of a
   * type, end to end; or all of them in the order they were chosen in.
   */
  readonly together: 'as-fits' | 'by-position' | 'by-run' | 'by-type' | 'in-order';
  /** Units start on slot 1 and each so many slots after it: 1 is any slot, 32 is 1, 33, 65, … */
  readonly grid: number;
  /** Slots left free at the end of each universe. */
  readonly spareAtEnd: number;
  /** Slots left free after the units of each position, run or type, so far as its universe has them. */
  readonly spareAfterGroup: number;
  /** Universes that may be used; all when empty. */
  readonly allowed: readonly UniverseRange[];
  readonly barred: readonly UniverseRange[];
  /** How much work may be spent on few universes; the same rig, request and steps give the same plan. */
  readonly steps: number;
}

const ALLOCATE_DEFAULTS: AllocateOptions = {
  breaks: 'in-one-universe',
  together: 'as-fits',
  grid: 1,
  spareAtEnd: 0,
  spareAfterGroup: 0,
  allowed: [],
  barred: [],
  steps: PACK_STEPS,
};

/** The options in full, or the number among them that cannot be one. */
export function fullOptions(given: Partial<AllocateOptions>): Result<AllocateOptions, PlanRefusal> {
  const options = { ...ALLOCATE_DEFAULTS, ...given };
  const { grid, spareAtEnd, spareAfterGroup } = options;
  if (!isWithin(grid, 1, SLOTS)) return refuse({ code: 'bad-number', value: grid });
  if (!isWithin(spareAtEnd, 0, SLOTS - 1)) return refuse({ code: 'bad-number', value: spareAtEnd });
  if (!isWithin(spareAfterGroup, 0, SLOTS - 1)) return refuse({ code: 'bad-number', value: spareAfterGroup });
  return ok(options);
}

const isWithin = (value: number, least: number, most: number) =>
  Number.isInteger(value) && value >= least && value <= most;
