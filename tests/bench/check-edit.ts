import FlattenTree from '@flatten-js/interval-tree';
import { type Rng, seededRng } from '#base/rng.ts';
import { rowsOf, setRow } from '#base/table.ts';
import { checkRig } from '#engine/check/check-rig.ts';
import { type Checker, createChecker } from '#engine/check/checker.ts';
import { type Absolute, absolute, slotOf, universeOf } from '#engine/model/address.ts';
import type { Finding } from '#engine/model/finding.ts';
import type { Fixture } from '#engine/model/fixture.ts';
import type { FixtureId } from '#engine/model/ids.ts';
import { cellsOf, readFixture } from '#engine/model/read-fixture.ts';
import type { Rig } from '#engine/model/rig.ts';
import type { Outcome } from './frame/bench.ts';
import { withPlant } from './frame/large-plant.ts';
import { largeRig } from './frame/large-rig.ts';
import { measure, percentile, spellTime } from './frame/measure.ts';

export const name = 'check-edit';
export const bar = 'p50<=5 µs, p99<=50 µs at 50,000 fixtures, p50<=1.5x p50 at 500';

/**
 * One edit: a fixture gets another address, channel, unit or note. Timed is the whole step of a checker from one rig to
 * the next: finding what differs, and the exact change of the findings. Ratio: a full check against the median step.
 */
export function run({ smoke }: { readonly smoke: boolean }): Outcome {
  const steps = smoke ? 200 : 20_000;
  const small = stepsOf(rigOf(500), steps);
  const large = stepsOf(rigOf(smoke ? 1000 : 50_000), steps);
  const planted = stepsOf(withPlant(rigOf(smoke ? 1000 : 50_000)), steps);
  const full = measure(() => checkRig(large.rig), { warmUp: 1, repeats: smoke ? 1 : 5 }).median;
  const p50 = percentile(large.times, 0.5);
  const p99 = percentile(large.times, 0.99);
  const growth = p50 / percentile(small.times, 0.5);
  return {
    ratio: full / p50,
    figure: `p50 ${spellTime(p50)}, p99 ${spellTime(p99)}`,
    baseline: `${spellTime(full)} (full check)`,
    ok: p50 <= 0.005 && p99 <= 0.05 && growth <= 1.5,
    also: {
      'p50 at 500': spellTime(percentile(small.times, 0.5)),
      growth: growth.toPrecision(3),
      'worst step': spellTime(Math.max(...large.times)),
      'with network, runs, feeds and limits': `p50 ${spellTime(percentile(planted.times, 0.5))}, p99 ${spellTime(percentile(planted.times, 0.99))}, ${planted.findings} findings`,
      'full check of that': spellTime(
        measure(() => checkRig(planted.rig), { warmUp: 1, repeats: smoke ? 1 : 3 }).median,
      ),
      'tree remove, insert, search p50': spellTime(treeEdit(large.rig, smoke ? 200 : 5000)),
    },
  };
}

const rigOf = (fixtures: number) => largeRig({ fixtures, perUniverse: 25, clashing: 0.001, seed: 7 });

interface Steps {
  readonly times: readonly number[];
  readonly rig: Rig;
  /** That stand at the end. */
  readonly findings: number;
}

/** One in so many fixtures stands edited at a time, so that universes are as full of trouble in a small rig as in a large. */
const PER_STANDING = 2500;

/**
 * Makes random edits one by one, and takes the oldest of them back while more than a few stand: the rig stays in the order
 * a rig at work is in, with trouble coming and going. Times the checker's step for each, and holds what it says to a full check.
 */
function stepsOf(start: Rig, steps: number): Steps {
  const rng = seededRng(3);
  let rig = start;
  const fixtures = rig.fixtures.size;
  const ids = [...rowsOf(rig.fixtures)].map(({ id }) => id);
  const rows = new Map<FixtureId, Fixture>([...rowsOf(rig.fixtures)].map((row) => [row.id, row]));
  const checker = createChecker(rig);
  const held = new Set(checker.findings().map(({ key }) => key));
  const warmUp = Math.max(100, steps / 4);
  const times: number[] = [];
  const standing: Fixture[] = [];
  for (let step = 0; step < warmUp + steps; step++) {
    const back = standing.length > fixtures / PER_STANDING ? standing.shift() : undefined;
    const old = rows.get(back?.id ?? rng.pick(ids)) as Fixture;
    const fixture = back ?? edited(rng, old, fixtures);
    if (back === undefined) standing.push(old);
    rows.set(fixture.id, fixture);
    rig = { ...rig, fixtures: setRow(rig.fixtures, fixture) };
    const from = performance.now();
    const { added, removed } = checker.update(rig);
    const time = performance.now() - from;
    if (step >= warmUp) times.push(time);
    for (const { key } of removed) held.delete(key);
    for (const { key } of added) held.add(key);
  }
  mustAgree(held, checker, checkRig(rig));
  return { times, rig, findings: held.size };
}

/** Most edits of a patch set an address; half of those go somewhere near, half to another universe. */
function edited(rng: Rng, fixture: Fixture, fixtures: number): Fixture {
  const cells = cellsOf(fixture);
  const dice = rng.int(10);
  if (dice === 0) return readFixture(fixture.id, { ...cells, notes: `note ${rng.int(1000)}` });
  if (dice === 1) return readFixture(fixture.id, { ...cells, unit: String(rng.int(40)) });
  if (dice === 2) return readFixture(fixture.id, { ...cells, channel: 1 + rng.int(fixtures) });
  const universes = Math.ceil(fixtures / 25);
  const old = fixture.addresses[0] ?? absolute(1, 1);
  const universe = rng.int(2) === 0 ? universeOf(old) : 1 + rng.int(universes);
  return readFixture(fixture.id, { ...cells, address: absolute(universe, 1 + rng.int(470)) });
}

function mustAgree(held: ReadonlySet<string>, checker: Checker, full: readonly Finding[]): void {
  const whole = full.map(({ key }) => key).join('\n');
  const told =
    [...held].sort().join('\n') ===
    full
      .map(({ key }) => key)
      .sort()
      .join('\n');
  if (
    !told ||
    checker
      .findings()
      .map(({ key }) => key)
      .join('\n') !== whole
  ) {
    throw new Error(`the steps led to ${held.size} findings, a full check to ${full.length}, or others`);
  }
}

/** The median time in which a tree per universe takes a fixture out, puts it in elsewhere, and says whom it meets there. */
function treeEdit(rig: Rig, steps: number): number {
  const rng = seededRng(4);
  const trees = new Map<number, FlattenTree<string>>();
  const spans = [...rowsOf(rig.fixtures)].map((fixture) => ({ id: fixture.id, at: fixture.addresses[0] as Absolute }));
  const treeIn = (at: Absolute) => {
    const tree = trees.get(universeOf(at)) ?? new FlattenTree<string>();
    trees.set(universeOf(at), tree);
    return tree;
  };
  const span = (at: Absolute): [number, number] => [slotOf(at), slotOf(at) + 15];
  for (const { id, at } of spans) treeIn(at).insert(span(at), id);
  const times: number[] = [];
  for (let step = 0; step < steps; step++) {
    const moved = rng.pick(spans);
    const to = absolute(universeOf(moved.at), 1 + rng.int(470));
    const from = performance.now();
    treeIn(moved.at).remove(span(moved.at), moved.id);
    treeIn(to).search(span(to));
    treeIn(to).insert(span(to), moved.id);
    times.push(performance.now() - from);
    moved.at = to;
  }
  return percentile(times, 0.5);
}
