import { describe, expect, it } from 'vitest';
import { type Rng, seededRng } from '#base/rng.ts';
import { getRow } from '#base/table.ts';
import { mostThatStays } from '#tests/support/exact-repair.ts';
import { clashes, ids, shuffled } from '#tests/support/planned.ts';
import { idsOf, randomRig, withLocks } from '#tests/support/random-rig.ts';
import { printFinding, printPlan, rigOf } from '#tests/support/rig-shorthand.ts';
import { checkRig } from '../../check/check-rig.ts';
import { applyEdits } from '../../model/apply-edits.ts';
import { type FixtureId, positionId } from '../../model/ids.ts';
import type { Rig } from '../../model/rig.ts';
import { costOf, REPAIR_DEFAULTS, type RepairOptions } from './repair-options.ts';
import { repairPlan } from './repair-plan.ts';

const lines = (rig: Rig, options: Partial<RepairOptions> = {}) => {
  const repair = repairPlan(rig, options);
  return repair.ok ? printPlan(repair.value.plan) : repair.error;
};

/** Claims on slots that several want or that are not there: what is left of a clash of three may still be a clash. */
const claimsTooMany = (rig: Rig) =>
  checkRig(rig).reduce((sum, finding) => {
    if (finding.rule !== 'slots-claimed-twice' && finding.rule !== 'past-the-end') return sum;
    return sum + (finding.run.last - finding.run.first + 1) * finding.fixtures.length;
  }, 0);

describe('repair', () => {
  it('[PL23] moves one unit out of the middle, not two from its sides', () => {
    const rig = rigOf('1:1 Spot/20\n1:15 Spot/20\n1:30 Spot/20');
    const repair = repairPlan(rig);
    expect(repair).toMatchObject({ value: { cost: 1, isLeast: true, left: [] } });
    expect(lines(rig)).toEqual(['f2 address 1:50']);
  });

  it('[PL23] moves two that are cheap rather than one that is dear', () => {
    const rig = rigOf('1:1 Spot/20 @Floor.1\n1:15 Spot/20 @Bridge.1\n1:30 Spot/20 @Floor.2');
    const positionCosts = new Map([[positionId('BRIDGE'), 3]]);
    expect(lines(rig, { positionCosts })).toEqual(['f1 address 1:35', 'f3 address 1:55']);
    // Set already, those two cost more than the one on the bridge.
    const alreadySet = new Set(ids('f1 f3'));
    expect(lines(rig, { positionCosts, alreadySet })).toEqual(['f2 address 1:50']);
    expect(lines(withLocks(rig, new Set(ids('f2'))), { positionCosts, alreadySet })).toHaveLength(2);
  });

  it('[PL23] keeps units together that act as one, and counts all of them', () => {
    const rig = rigOf('1:1 Spot/20 #1\n1:1 Spot/20 #1\n1:10 Spot/20 #2');
    expect(lines(rig)).toEqual(['f3 address 1:21']);
    const repair = repairPlan(withLocks(rig, new Set(ids('f3'))));
    expect(repair).toMatchObject({ value: { cost: 2, moves: [{ fixtures: ['f1', 'f2'], cost: 2 }] } });
  });

  it('[PL23] brings units back from past the end; to its own universe, else one in use, else a new one', () => {
    expect(lines(rigOf('1:500 Spot/20\n2:1 House/100'))).toEqual(['f1 address 1:493']);
    expect(lines(rigOf('1:500 Spot/20\n1:1 House/495\n5:1 House/100'))).toEqual(['f1 address 5:101']);
    expect(lines(rigOf('1:500 Spot/20\n1:1 House/495\n5:1 House/500'))).toEqual(['f1 address 2:1']);
  });

  it('[PL23] moves only the break that is in the way', () => {
    const rig = rigOf('1:1+2:1 Bar/10+10\n1:5 Spot/20 #1\n1:5 Spot/20 #1');
    expect(lines(rig)).toEqual(['f1 address 1:25']);
  });

  it('[PL23] says what is left of those that cannot be moved, and refuses what there is nothing to do for', () => {
    const rig = rigOf('1:1 Ghost/?\n1:1 Spot/16 !Ona\n2:1 Spot/16 x2\n2:10 Spot/16');
    const repair = repairPlan(rig);
    if (!repair.ok) throw new Error(repair.error.code);
    expect(repair.value.left.map(printFinding)).toEqual(['blocker slots-claimed-twice 1:1-1 f1 f2']);
    expect(printPlan(repair.value.plan)).toEqual(['f5 address 2:33']);
    expect(lines(rigOf('1:1 Spot/16 x4'))).toEqual({ code: 'changes-nothing' });
    expect(lines(rig, { setCost: -1 })).toEqual({ code: 'bad-number', value: -1 });
    expect(lines(rig, { positionCosts: new Map([[positionId('x'), 0]]) })).toEqual({ code: 'bad-number', value: 0 });
  });

  const randomOptions = (rng: Rng, rig: Rig): RepairOptions => ({
    ...REPAIR_DEFAULTS,
    positionCosts: new Map([
      [positionId('lx 1'), 1 + rng.int(5)],
      [positionId('boom'), 1 + rng.int(3)],
    ]),
    alreadySet: new Set(idsOf(rig).filter(() => rng.int(3) === 0)),
    setCost: rng.int(3),
  });

  /** Half of the rigs have nobody locked, the others every eighth. */
  const someLocked = (rng: Rng, rig: Rig) => new Set(rng.int(2) === 0 ? [] : idsOf(rig).filter(() => rng.int(8) === 0));

  const moved = (before: Rig, after: Rig, id: FixtureId) =>
    getRow(before.fixtures, id)?.addresses.join() !== getRow(after.fixtures, id)?.addresses.join();

  it('[PL24] [LK1] what stays weighs as much as the best of all sets that could, on thousands of small rigs', () => {
    let repaired = 0;
    let held = 0;
    for (let seed = 1; seed <= 3000; seed++) {
      const rng = seededRng(seed);
      const bare = randomRig(seed, { fixtures: 4 + rng.int(9), universes: 1 + rng.int(2) });
      const rig = withLocks(bare, someLocked(rng, bare));
      const options = randomOptions(rng, rig);
      const cost = (id: FixtureId) => {
        const fixture = getRow(rig.fixtures, id);
        return fixture === undefined ? 0 : costOf(fixture, options);
      };
      const { movable, most } = mostThatStays(rig, cost);
      const repair = repairPlan(rig, options);
      if (!repair.ok) {
        expect(['changes-nothing', 'held'], `seed ${seed}`).toContain(repair.error.code);
        held += Number(repair.error.code === 'held');
        continue;
      }
      repaired += 1;
      const after = applyEdits(rig, repair.value.plan.edits);
      const gone = idsOf(rig).filter((id) => moved(rig, after, id));
      const total = (some: readonly FixtureId[]) => some.reduce((sum, id) => sum + cost(id), 0);
      const label = `seed ${seed}: ${printPlan(repair.value.plan).join(', ')}`;
      expect(movable - total(gone), label).toBe(most);
      expect(repair.value.cost, label).toBe(total(gone));
      expect(repair.value.isLeast, label).toBe(true);
    }
    expect(repaired).toBeGreaterThan(2000);
    expect(held).toBeGreaterThan(20);
  });

  it('[PL23] [LK2] [LK5] clears all that can be moved, makes no new clash, moves nothing locked and names who holds what is left; twice is once', () => {
    for (let seed = 1; seed <= 400; seed++) {
      const rng = seededRng(seed + 10_000);
      const bare = randomRig(seed + 10_000, { fixtures: 40, universes: 3 });
      const locked = someLocked(rng, bare);
      const rig = withLocks(bare, locked);
      const options = randomOptions(rng, rig);
      const repair = repairPlan(rig, options);
      expect(repairPlan(shuffled(rig), options), `seed ${seed}`).toEqual(repair);
      if (!repair.ok) continue;
      const after = applyEdits(rig, repair.value.plan.edits);
      for (const id of locked) expect(moved(rig, after, id), `seed ${seed}: ${id}`).toBe(false);
      expect(repair.value.left.map(printFinding), `seed ${seed}`).toEqual(clashes(after));
      for (const { fixtures } of repair.value.left) {
        for (const id of fixtures) expect(moved(rig, after, id), `seed ${seed}`).toBe(false);
      }
      const inClashes = new Set(repair.value.left.flatMap(({ fixtures }) => fixtures));
      expect(repair.value.held, `seed ${seed}`).toEqual([...locked].filter((id) => inClashes.has(id)).sort());
      expect(claimsTooMany(after), `seed ${seed}`).toBeLessThan(claimsTooMany(rig));
      const { held } = repair.value;
      const error = held.length === 0 ? { code: 'changes-nothing' } : { code: 'held', fixtures: held };
      expect(repairPlan(after, options), `seed ${seed}`).toEqual({ ok: false, error });
    }
  });
});
