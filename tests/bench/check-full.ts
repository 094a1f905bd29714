import FlattenTree from '@flatten-js/interval-tree';
import { IntervalTree as NodeTree } from 'node-interval-tree';
import { RigIndex } from '#engine/address/occupancy-index.ts';
import { firstOf, lastOf, type UniverseClaims } from '#engine/address/universe-claims.ts';
import { checkRig } from '#engine/check/check-rig.ts';
import { slotsClaimedTwice } from '#engine/check/slots-claimed-twice.ts';
import type { Finding } from '#engine/model/finding.ts';
import type { Outcome } from './frame/bench.ts';
import { largeRig } from './frame/large-rig.ts';
import { measure, spellTime } from './frame/measure.ts';

export const name = 'check-full';
export const bar = '>=150x faster than interval trees, <=1.5 ms, 50,000 fixtures in 2,000 universes';

/** One universe's intervals as plain data: what the trees are built of. */
interface Intervals {
  readonly universe: number;
  readonly spans: readonly (readonly [first: number, last: number, fixture: string])[];
}

/**
 * The conflict check that a checker runs when everything changed, over the index it keeps, against the same question asked
 * of trees: one per universe, kept as well (searched only), and built afresh. The kept ones are the bar's baseline: they
 * are the harder one to beat.
 */
export function run({ smoke }: { readonly smoke: boolean }): Outcome {
  const fixtures = smoke ? 500 : 50_000;
  const rig = largeRig({ fixtures, perUniverse: 25, clashing: 0.001, seed: 7 });
  const messy = largeRig({ fixtures, perUniverse: 25, clashing: 0.01, seed: 7 });
  const index = new RigIndex(rig);
  const repeats = smoke ? 1 : 5;
  const data = intervalsOf(index);
  const ours = measure(() => conflicts(index), { warmUp: smoke ? 1 : 500, repeats: smoke ? 1 : 301 });
  const flatten = keptFlatten(data);
  const node = keptNode(data);
  mustAgree(conflicts(index), [flatten.search(), node.search()]);
  const kept = [flatten, node].map((trees) => measure(trees.search, { warmUp: 2, repeats }).median);
  const built = [keptFlatten, keptNode].map(
    (build) => measure(() => build(data).search(), { warmUp: 1, repeats }).median,
  );
  const messyIndex = new RigIndex(messy);
  const baseline = Math.min(...kept);
  const ratio = baseline / ours.median;
  return {
    ratio,
    figure: spellTime(ours.median),
    baseline: `${spellTime(baseline)} (trees kept, the faster of two)`,
    ok: ratio >= 150 && ours.median <= 1.5,
    also: {
      'trees built and searched': built.map(spellTime).join(' and '),
      'ratio to those': Math.round(Math.min(...built) / ours.median),
      'bare pass over the same memory': spellTime(measure(() => barePass(index), { warmUp: 40, repeats: 51 }).median),
      'with ten times the clashes': spellTime(measure(() => conflicts(messyIndex), { warmUp: 20, repeats: 51 }).median),
      'every rule, from rows': spellTime(measure(() => checkRig(rig), { warmUp: 2, repeats }).median),
    },
  };
}

function conflicts(index: RigIndex): Finding[] {
  const found: Finding[] = [];
  for (const claims of index.allClaims()) {
    const fresh = slotsClaimedTwice(claims);
    if (fresh.length > 0) found.push(...fresh);
  }
  return found;
}

function barePass(index: RigIndex): number {
  let sum = 0;
  for (const { spans } of index.allClaims()) for (let i = 0; i < spans.length; i++) sum += spans[i] as number;
  return sum;
}

function intervalsOf(index: RigIndex): Intervals[] {
  return [...index.allClaims()].map(({ universe, spans, units }: UniverseClaims) => ({
    universe,
    spans: spans.map((span, at) => [firstOf(span) + 1, lastOf(span) + 1, units[at]?.fixture.id ?? ''] as const),
  }));
}

interface Trees {
  /** Every overlapping pair, as `universe first-last fixture fixture`. */
  search(): string[];
}

function keptFlatten(data: readonly Intervals[]): Trees {
  const trees = data.map(({ spans }) => {
    const tree = new FlattenTree<number>();
    for (const [at, [first, last]] of spans.entries()) tree.insert([first, last], at);
    return tree;
  });
  return {
    search: () =>
      data.flatMap((each, at) => pairsOf(each, (span) => trees[at]?.search([span[0], span[1]]) as number[])),
  };
}

function keptNode(data: readonly Intervals[]): Trees {
  const trees = data.map(({ spans }) => {
    const tree = new NodeTree<{ low: number; high: number; at: number }>();
    for (const [at, [low, high]] of spans.entries()) tree.insert({ low, high, at });
    return tree;
  });
  return {
    search: () =>
      data.flatMap((each, at) =>
        pairsOf(each, (span) => (trees[at]?.search(span[0], span[1]) ?? []).map((record) => record.at)),
      ),
  };
}

function pairsOf(
  { universe, spans }: Intervals,
  search: (span: Intervals['spans'][number]) => readonly number[],
): string[] {
  const pairs: string[] = [];
  for (let at = 0; at < spans.length; at++) {
    const span = spans[at] as Intervals['spans'][number];
    for (const other of search(span)) {
      if (other <= at) continue;
      const [first, last, fixture] = spans[other] as Intervals['spans'][number];
      const [one, two] = [span[2], fixture].sort();
      pairs.push(`${universe} ${Math.max(first, span[0])}-${Math.min(last, span[1])} ${one} ${two}`);
    }
  }
  return pairs;
}

/** Throws unless the findings name exactly the pairs the trees found; the rig of this bench has no three on one slot. */
function mustAgree(found: readonly Finding[], others: readonly (readonly string[])[]): void {
  const ours = found.map((finding) => {
    if (!('run' in finding)) throw new Error(`no run in ${finding.key}`);
    const { universe, first, last } = finding.run;
    return `${universe} ${first}-${last} ${finding.fixtures.join(' ')}`;
  });
  for (const theirs of others) {
    const same = [...theirs].sort().join('\n') === [...ours].sort().join('\n');
    if (!same) throw new Error(`the trees found ${theirs.length} pairs, the check ${ours.length}, or others`);
  }
}
