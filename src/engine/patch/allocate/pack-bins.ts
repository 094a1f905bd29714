import { type Rng, seededRng } from '#base/rng.ts';
import { bestFitDecreasing } from './best-fit.ts';
import { type Bin, type Budget, countOpened, type PackJob, put } from './bin.ts';
import { fewest } from './fewest.ts';
import { fillOneByOne } from './fill-one-by-one.ts';
import { FullestPick, NOWHERE } from './fullest-pick.ts';
import { boundsBeside, fractionsBeside, type ProvenBounds } from './lower-bounds.ts';
import { roundUp } from './round-up.ts';

export interface Packing {
  /** The rooms in their order, then the bins that were opened; each with the widths that lie in it. */
  readonly bins: readonly Bin[];
  readonly opened: number;
  readonly bounds: ProvenBounds;
  /** What best-fit-decreasing would open. */
  readonly bestFit: number;
}

/** About a fifth of a second. */
export const PACK_STEPS = 60_000_000;

/**
 * Packs widths into few bins: the best of best-fit-decreasing, filling one by one, and the whole bins of the best packing into fractions; then
 * improved until it meets the lower bound or the steps are used up. Whenever it stops it has a whole packing, never worse than
 * best-fit-decreasing. [PL22]
 */
export function packBins(job: PackJob, steps: number): Packing {
  const bounds = boundsBeside(job.widths, job.rooms, job.capacity);
  const budget: Budget = { steps };
  const first = bestFitDecreasing(job);
  const bestFit = countOpened(first);
  const found = bestFit > bounds.l2 ? beyondBestFit(job, first, bounds.l2, budget) : { bins: first, proven: bounds.l2 };
  return {
    bins: found.bins.filter((bin) => bin.isRoom || bin.widths.length > 0),
    opened: countOpened(found.bins),
    bounds: { ...bounds, proven: found.proven },
    bestFit,
  };
}

function beyondBestFit(job: PackJob, first: Bin[], l2: number, budget: Budget) {
  let bins = first;
  const take = (other: Bin[] | undefined) => {
    if (other !== undefined && countOpened(other) < countOpened(bins)) bins = other;
  };
  take(fillOneByOne(job, budget));
  // With many different widths most packings come to L2 soon: only the others are worth the sums that prove more.
  if (new Set(job.widths).size > SOON) spend(budget, 1 / 8, (share) => improve(bins, l2, job.capacity, share));
  if (countOpened(bins) <= l2) return { bins, proven: l2 };
  const fractions = spend(budget, 3 / 4, (share) => fractionsBeside(job, share));
  const proven = Math.max(l2, fractions.bound);
  if (countOpened(bins) > proven && fractions.whole.length > 0) take(roundUp(job, fractions, proven, budget));
  if (countOpened(bins) > proven) take(fewest(job, proven, countOpened(bins), budget));
  improve(bins, proven, job.capacity, budget);
  return { bins, proven };
}

/** With no more different widths than this, fractions of bins are soon known. */
const SOON = 32;

/** Lets something use a part of what is left of a budget. */
function spend<Found>(budget: Budget, part: number, use: (share: Budget) => Found): Found {
  const share: Budget = { steps: Math.floor(budget.steps * part) };
  budget.steps -= share.steps;
  const found = use(share);
  budget.steps += Math.max(0, share.steps);
  return found;
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
