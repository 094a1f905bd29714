import { seededRng } from '#base/rng.ts';
import { rowsOf, tableOf } from '#base/table.ts';
import { fixtureId, modeId } from '#engine/model/ids.ts';
import { readFixture } from '#engine/model/read-fixture.ts';
import { EMPTY_RIG, type Rig } from '#engine/model/rig.ts';
import { allocatePlan } from '#engine/patch/allocate/allocate-plan.ts';
import { PACK_STEPS, packBins } from '#engine/patch/allocate/pack-bins.ts';
import { fewestBins } from '#tests/support/exact-packing.ts';
import type { Outcome } from './frame/bench.ts';
import { spellTime } from './frame/measure.ts';
import { CAPACITY, type Mix, publishedMixes, rigMixes } from './frame/packing-mixes.ts';

export const name = 'pack';
export const bar =
  'never worse than best-fit-decreasing; within 1% of exact, or what is proven (published constructions: or one universe more); <=500 ms for 2,000 fixtures';

/**
 * Finds room for 2,000 unpatched fixtures of eight mixes of widths, the whole plan timed; for instances made as published ones are; and for
 * small cases of which an exact search knows the fewest universes. Ratio: universes of best-fit-decreasing against ours, all together.
 */
export function run({ smoke }: { readonly smoke: boolean }): Outcome {
  const mixes = rigMixes(smoke ? 60 : 2000).map(measured);
  const published = publishedMixes(smoke ? 1 : 5).map(measured);
  const results = [...mixes, ...published];
  const small = smallCases(smoke ? 20 : 400);
  const total = (of: (result: Measured) => number) => results.reduce((sum, result) => sum + of(result), 0);
  const ours = total(({ opened }) => opened);
  const fit = total(({ bestFit }) => bestFit);
  const slowest = Math.max(...results.map(({ time }) => time));
  return {
    ratio: fit / ours,
    figure: `${ours} universes, slowest mix ${spellTime(slowest)}`,
    baseline: `${fit} universes (best-fit-decreasing, ${spellTime(total(({ fitTime }) => fitTime))})`,
    ok: mixes.every(isGood) && published.every(isClose) && slowest <= 500 && small.worse === 0,
    also: {
      ...Object.fromEntries(mixes.map((result) => [result.mix.name, said(result)])),
      ...Object.fromEntries([...byName(published)].map(([name, some]) => [name, saidTogether(some)])),
      'small cases at the exact optimum': `${small.met} of ${small.cases}`,
    },
  };
}

interface Measured {
  readonly mix: Mix;
  readonly opened: number;
  readonly bestFit: number;
  readonly l1: number;
  readonly l2: number;
  readonly proven: number;
  readonly time: number;
  readonly fitTime: number;
}

function measured(mix: Mix): Measured {
  const rig = rigOfWidths(mix.widths);
  const ids = [...rowsOf(rig.fixtures)].map(({ id }) => id);
  const from = performance.now();
  const made = allocatePlan(rig, ids);
  const time = performance.now() - from;
  if (!made.ok) throw new Error(`${mix.name}: ${made.error.code}`);
  const { opened, bounds, bestFit: told } = made.value;
  const fitFrom = performance.now();
  const bestFit = bestFitDecreasing(mix.widths);
  const fitTime = performance.now() - fitFrom;
  if (bestFit !== told) throw new Error(`${mix.name}: best fit opens ${bestFit}, the plan says ${told}`);
  if (opened > bestFit || opened < bounds.proven || (mix.optimum ?? opened) > opened) {
    throw new Error(`${mix.name}: ${opened} universes cannot be, with ${bounds.proven} proven and best fit ${bestFit}`);
  }
  return { mix, opened, bestFit, ...bounds, time, fitTime };
}

/** What is proven is no more than the optimum, so that what is within 1% of it is within 1% of the optimum. */
const isGood = ({ mix, opened, proven }: Measured) => opened <= (mix.optimum ?? proven) * 1.01 || opened === proven;

/** Of 40 bins one more is 2.5 % more: for small instances the bar is one. */
const isClose = (result: Measured) => isGood(result) || result.opened === (result.mix.optimum ?? result.proven) + 1;

const said = ({ mix, opened, bestFit, l1, l2, proven, time }: Measured) =>
  `${opened} (L1 ${l1}, L2 ${l2}, proven ${proven}, ${optimumWords({ mix, opened, proven })}best fit ${bestFit}) ${spellTime(time)}`;

/** Known by construction, or because what is proven was met. */
function optimumWords({ mix, opened, proven }: Pick<Measured, 'mix' | 'opened' | 'proven'>): string {
  const known = mix.optimum ?? (opened === proven ? opened : undefined);
  return known === undefined ? '' : `optimum ${known}, `;
}

function byName(results: readonly Measured[]): ReadonlyMap<string, readonly Measured[]> {
  const groups = new Map<string, Measured[]>();
  for (const result of results) groups.set(result.mix.name, [...(groups.get(result.mix.name) ?? []), result]);
  return groups;
}

function saidTogether(some: readonly Measured[]): string {
  const sum = (of: (result: Measured) => number) => some.reduce((total, result) => total + of(result), 0);
  const atBest = some.filter(({ mix, opened, proven }) => opened === (mix.optimum ?? proven)).length;
  const figures = `${sum(({ opened }) => opened)} (L1 ${sum(({ l1 }) => l1)}, L2 ${sum(({ l2 }) => l2)}, proven ${sum(({ proven }) => proven)}, best fit ${sum(({ bestFit }) => bestFit)})`;
  const slowest = Math.max(...some.map(({ time }) => time));
  return `${figures}, ${atBest} of ${some.length} at the known optimum, ${spellTime(slowest)} at most`;
}

function rigOfWidths(widths: readonly number[]): Rig {
  const modes = [...new Set(widths)].map((width) => {
    const mode = String(width);
    return { id: modeId('Unit', mode), type: 'Unit', mode, footprints: [width], pin: null };
  });
  const fixtures = widths.map((width, at) =>
    readFixture(fixtureId(`f${at}`), {
      type: 'Unit',
      mode: String(width),
      position: `Position ${at % 40}`,
      unit: String(at),
    }),
  );
  return { ...EMPTY_RIG, modes: tableOf(modes), fixtures: tableOf(fixtures) };
}

/** As the textbook has it, without a thought for speed: the baseline shares no code with what it is held against. */
function bestFitDecreasing(widths: readonly number[]): number {
  const left: number[] = [];
  for (const width of [...widths].sort((a, b) => b - a)) {
    let best = -1;
    for (const [at, free] of left.entries()) {
      if (free >= width && (best === -1 || free < (left[best] as number))) best = at;
    }
    if (best === -1) left.push(CAPACITY - width);
    else left[best] = (left[best] as number) - width;
  }
  return left.length;
}

/** How often the exact optimum of a few large widths is met; where the exact search gives up, the case does not count. */
function smallCases(count: number): { readonly cases: number; readonly met: number; readonly worse: number } {
  const rng = seededRng(12);
  let cases = 0;
  let met = 0;
  for (let n = 0; n < count; n++) {
    const widths = Array.from({ length: 10 + rng.int(15) }, () => 60 + rng.int(240));
    const fewest = fewestBins(widths, CAPACITY, 200_000);
    if (fewest === undefined) continue;
    const { opened } = packBins({ widths, rooms: [], capacity: CAPACITY }, PACK_STEPS / 20);
    if (opened < fewest) throw new Error(`${opened} universes where ${fewest} are the fewest: ${widths}`);
    cases += 1;
    met += Number(opened === fewest);
  }
  return { cases, met, worse: cases - met };
}
