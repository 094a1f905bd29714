import FlattenTree from '@flatten-js/interval-tree';
import { IntervalTree as NodeTree } from 'node-interval-tree';
import { expect, it } from 'vitest';
import { rowsOf } from '#base/table.ts';
import { slotRuns } from '#engine/address/claim.ts';
import { checkRig } from '#engine/check/check-rig.ts';
import { rigSummary } from '#engine/check/rig-summary.ts';
import type { Rig } from '#engine/model/rig.ts';
import { randomRig } from '#tests/support/random-rig.ts';

interface Interval {
  readonly fixture: string;
  readonly part: number;
  readonly low: number;
  readonly high: number;
}

/** Every claim by universe, as plain intervals. */
function intervalsOf(rig: Rig): Map<number, Interval[]> {
  const universes = new Map<number, Interval[]>();
  for (const fixture of rowsOf(rig.fixtures)) {
    for (const { universe, part, first, last } of slotRuns(rig, fixture)) {
      const intervals = universes.get(universe) ?? [];
      universes.set(universe, intervals);
      intervals.push({ fixture: fixture.id, part, low: first, high: last });
    }
  }
  return universes;
}

const pair = (universe: number, a: Interval, b: Interval) =>
  `${universe}:${Math.max(a.low, b.low)}-${Math.min(a.high, b.high)} ${[a.fixture, b.fixture].sort().join(' ')}`;

const isLater = (a: Interval, b: Interval) => (a.fixture === b.fixture ? b.part > a.part : b.fixture > a.fixture);

/** Overlapping pairs by `@flatten-js/interval-tree` 2.0.3. */
function pairsByFlatten(rig: Rig): string[] {
  return [...intervalsOf(rig)].flatMap(([universe, intervals]) => {
    const tree = new FlattenTree<Interval>();
    for (const each of intervals) tree.insert([each.low, each.high], each);
    return intervals.flatMap((each) =>
      (tree.search([each.low, each.high]) as Interval[])
        .filter((other) => isLater(each, other))
        .map((other) => pair(universe, each, other)),
    );
  });
}

/** The same by `node-interval-tree` 2.1.2. */
function pairsByNode(rig: Rig): string[] {
  return [...intervalsOf(rig)].flatMap(([universe, intervals]) => {
    const tree = new NodeTree<Interval>();
    for (const each of intervals) tree.insert(each);
    return intervals.flatMap((each) =>
      tree
        .search(each.low, each.high)
        .filter((other) => isLater(each, other))
        .map((other) => pair(universe, each, other)),
    );
  });
}

/** Pairs that the findings name: any two fixtures of one run. */
function pairsOfFindings(rig: Rig): Set<string> {
  const pairs = new Set<string>();
  for (const finding of checkRig(rig)) {
    if (finding.rule !== 'slots-claimed-twice' && finding.rule !== 'acting-as-one') continue;
    for (const a of finding.fixtures)
      for (const b of finding.fixtures) if (a < b) pairs.add(`${finding.run.universe} ${a} ${b}`);
  }
  return pairs;
}

it('[SU1] the summary lists exactly the overlaps that two interval-tree libraries find', () => {
  let found = 0;
  for (let seed = 1; seed <= 150; seed++) {
    const rig = randomRig(seed, { fixtures: 5 + (seed % 40), universes: 1 + (seed % 4) });
    const { overlapPairs } = rigSummary(rig);
    const ours = overlapPairs
      .map(({ run, fixtures }) => `${run.universe}:${run.first}-${run.last} ${fixtures.join(' ')}`)
      .sort();
    expect(ours, `seed ${seed}`).toEqual(pairsByFlatten(rig).sort());
    expect(ours, `seed ${seed}`).toEqual(pairsByNode(rig).sort());
    found += ours.length;
  }
  expect(found).toBeGreaterThan(1000);
});

it('[CH1] the findings name exactly the pairs of fixtures that two interval-tree libraries find', () => {
  for (let seed = 1; seed <= 150; seed++) {
    const rig = randomRig(seed, { fixtures: 5 + (seed % 40), universes: 1 + (seed % 4) });
    const names = (pairs: string[]) => {
      const named = pairs.map((each) => each.split(/[: ]/)).filter(([, , a, b]) => a !== b);
      return new Set(named.map(([universe, , a, b]) => `${universe} ${a} ${b}`));
    };
    expect(pairsOfFindings(rig), `seed ${seed}`).toEqual(names(pairsByFlatten(rig)));
    expect(pairsOfFindings(rig), `seed ${seed}`).toEqual(names(pairsByNode(rig)));
  }
});
