import { type Rng, seededRng } from '#base/rng.ts';
import { bestFitDecreasing } from './best-fit.ts';
import { type Bin, type Budget, countOpened, type PackJob, put } from './bin.ts';
import { fillExactly } from './fill-exactly.ts';
import { fillOneByOne } from './fill-one-by-one.ts';
import { FullestPick, NOWHERE } from './fullest-pick.ts';
import { boundsBeside, type LowerBounds } from './lower-bounds.ts';

export interface Packing {
  /** The rooms in their order, then the bins that were opened; each with the widths that lie in it. */
  readonly bins: readonly Bin[];
  readonly opened: number;
  readonly bounds: LowerBounds;
  /** What best-fit-decreasing would open. */
  readonly bestFit: number;
}

/** About a tenth of a second. */
export const PACK_STEPS = 60_000_000;

/**
 * Packs widths into few bins: the better of best-fit-decreasing and filling one by one, then improved until it meets the
 * lower bound or the steps are used up. Whenever it stops it has a whole packing, never worse than best-fit-decreasing. [PL22]
 */
export function packBins(job: PackJob, steps: number): Packing {
  const bounds = boundsBeside(job.widths, job.rooms, job.capacity);
  const budget: Budget = { steps };
  const first = bestFitDecreasing(job);
  const bestFit = countOpened(first);
  let bins = first;
  if (bestFit > bounds.l2) {
    const filled = fillOneByOne(job, budget);
    if (filled !== undefined && countOpened(filled) < bestFit) bins = filled;
    const exact =
      job.widths.length + job.rooms.length <= FEW ? fewest(job, bounds.l2, countOpened(bins), budget) : undefined;
    if (exact !== undefined) bins = exact;
    improve(bins, bounds.l2, job.capacity, budget);
  }
  return {
    bins: bins.filter((bin) => bin.isRoom || bin.widths.length > 0),
    opened: countOpened(bins),
    bounds,
    bestFit,
  };
}

/** With more widths and rooms than this an exact search gets nowhere. */
const FEW = 200;

/** The packing into the fewest bins that an exact search finds with a third of the budget; undefined if none is better. */
function fewest(job: PackJob, bound: number, opened: number, budget: Budget): Bin[] | undefined {
  const share = Math.floor(budget.steps / 3 / Math.max(1, opened - bound));
  for (let most = bound; most < opened; most++) {
    const search: Budget = { steps: share };
    const bins = fillExactly(job, most, search);
    budget.steps -= share - Math.max(0, search.steps);
    if (bins !== undefined) return bins;
  }
  return undefined;
}

/**
 * Empties the emptiest bin bit by bit: what lies in it and in a few others is dealt out anew, the others filled as full as
 * can be. Kept when no more is left over than before.
 */
function improve(bins: Bin[], bound: number, capacity: number, budget: Budget): void {
  const rng = seededRng(1);
  const picks = new FullestPick(capacity);
  const least = bins.reduce(
    (low, { widths }) => widths.reduce((lower, width) => Math.min(lower, width), low),
    capacity,
  );
  const useful = bins.filter((bin) => bin.capacity >= least);
  while (budget.steps > 0 && countOpened(bins) > bound) {
    const emptiest = emptiestOpened(bins);
    if (emptiest === undefined) return;
    while (budget.steps > 0 && emptiest.widths.length > 0) {
      dealAnew(emptiest, someOthers(useful, emptiest, rng), { rng, picks, budget });
    }
  }
}

function emptiestOpened(bins: readonly Bin[]): Bin | undefined {
  let found: Bin | undefined;
  for (const bin of bins) {
    if (bin.isRoom || bin.widths.length === 0) continue;
    if (found === undefined || bin.left > found.left) found = bin;
  }
  return found;
}

function someOthers(bins: readonly Bin[], emptiest: Bin, rng: Rng): Bin[] {
  const others = new Set<Bin>();
  const wanted = 1 + rng.int(5);
  for (let tries = 0; tries < 12 && others.size < wanted; tries++) {
    const bin = rng.pick(bins);
    if (bin !== emptiest && (bin.isRoom || bin.widths.length > 0)) others.add(bin);
  }
  return [...others];
}

interface Tools {
  readonly rng: Rng;
  readonly picks: FullestPick;
  readonly budget: Budget;
}

function dealAnew(emptiest: Bin, others: readonly Bin[], { rng, picks, budget }: Tools): void {
  const pool = [...emptiest.widths];
  for (const { widths } of others) pool.push(...widths);
  shuffle(pool, rng);
  budget.steps -= DEAL_STEPS + pool.length * others.length * 16;
  const owners = new Int16Array(pool.length).fill(NOWHERE);
  let left = emptiest.capacity - emptiest.left;
  for (const [at, bin] of others.entries()) {
    left += bin.capacity - bin.left - picks.pick(pool, owners, bin.capacity, at);
  }
  if (left > emptiest.capacity - emptiest.left) return;
  for (const [at, bin] of [...others, emptiest].entries()) {
    const owner = at < others.length ? at : NOWHERE;
    bin.widths.length = 0;
    bin.left = bin.capacity;
    for (const [place, width] of pool.entries()) if (owners[place] === owner) put(bin, width);
  }
}

/** What dealing costs beside the sums, in steps. */
const DEAL_STEPS = 1000;

function shuffle(widths: number[], rng: Rng): number[] {
  for (let at = widths.length - 1; at > 0; at--) {
    const other = rng.int(at + 1);
    const width = widths[at] as number;
    widths[at] = widths[other] as number;
    widths[other] = width;
  }
  return widths;
}
