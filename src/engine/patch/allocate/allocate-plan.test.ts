import { describe, expect, it } from 'vitest';
import { type Rng, seededRng } from '#base/rng.ts';
import { getRow, rowsOf } from '#base/table.ts';
import { ids, shuffled, slotsOf } from '#tests/support/planned.ts';
import { idsOf, randomRig, withLocks } from '#tests/support/random-rig.ts';
import { printPlan, printRig, rigOf } from '#tests/support/rig-shorthand.ts';
import { slotRuns } from '../../address/claim.ts';
import { actAsOne } from '../../address/unit.ts';
import { openRanges, universesIn } from '../../address/universe-ranges.ts';
import { slotOf, type Universe } from '../../model/address.ts';
import { applyEdits } from '../../model/apply-edits.ts';
import type { Edit } from '../../model/edit.ts';
import { modeOf } from '../../model/find-mode.ts';
import { type FixtureId, fixtureId, modeId } from '../../model/ids.ts';
import type { Rig } from '../../model/rig.ts';
import type { AllocateOptions } from './allocate-options.ts';
import { allocatePlan } from './allocate-plan.ts';

const range = (first: number, last = first) => ({ first: first as Universe, last: last as Universe });

const lines = (rig: Rig, options: Partial<AllocateOptions> = {}, names?: string) => {
  const made = allocatePlan(rig, names === undefined ? idsOf(rig) : ids(names), options);
  return made.ok ? printPlan(made.value.plan) : made.error;
};

const placed = (rig: Rig, options: Partial<AllocateOptions> = {}) => {
  const made = allocatePlan(rig, idsOf(rig), options);
  return made.ok ? printRig(applyEdits(rig, made.value.plan.edits)) : made.error;
};

describe('allocate', () => {
  it('[PL20] opens few universes and says how few there can be', () => {
    const made = allocatePlan(rigOf('- Wash/300 x2\n- Spot/200 x2\n- Dim/12 x2'), ids('f1 f2 f3 f4 f5 f6'));
    expect(made).toMatchObject({
      value: { opened: 2, universes: [1, 2], bounds: { l1: 2, l2: 2, proven: 2 }, bestFit: 2, split: [] },
    });
  });

  it('[PL20] uses what others leave free, and leaves them where they are', () => {
    const rig = rigOf('1:1 House/100\n1:400 House/50\n2:1 House/500\n- Spot/290\n- Spot/300\n- Dim/12');
    expect(lines(rig, {}, 'f4 f5 f6')).toEqual(['f4 address 1:101', 'f5 address 3:1', 'f6 address 2:501']);
  });

  it('[PL20] keeps positions together, end to end, in the order of their units', () => {
    const rig = rigOf('- Spot/200 @Boom.2\n- Wash/150 @Bridge.2\n- Spot/200 @Bridge.1\n- Wash/150 @Boom.1');
    expect(placed(rig, { together: 'by-position' })).toEqual([
      'f1 1:151 Spot/200 @Boom.2',
      'f2 2:201 Wash/150 @Bridge.2',
      'f3 2:1 Spot/200 @Bridge.1',
      'f4 1:1 Wash/150 @Boom.1',
    ]);
  });

  it('[PL20] keeps runs together, in the order in which each passes its units; those on none fit anywhere', () => {
    const bare = rigOf('- Spot/200 @A.1\n- Spot/200 @A.2\n- Spot/200 @A.3\n- Spot/200 @A.4\n- Dim/12 @A.5');
    const onRun = (id: string, run: string, along: number) =>
      (['run', 'along'] as const).map((field): Edit => {
        return { kind: 'set-cell', fixture: fixtureId(id), field, value: field === 'run' ? run : along };
      });
    const rig = applyEdits(bare, [
      ...onRun('f1', 'Left', 2),
      ...onRun('f2', 'Right', 1),
      ...onRun('f3', 'left', 1),
      ...onRun('f4', 'Right', 2),
    ]);
    expect(lines(rig, { together: 'by-run' })).toEqual([
      'f3 address 1:1',
      'f1 address 1:201',
      'f2 address 2:1',
      'f4 address 2:201',
      'f5 address 2:401',
    ]);
  });

  it('[PL20] keeps types together, with room for more of each', () => {
    const rig = rigOf('- Spot/20 @A.1\n- Wash/30 @A.2\n- Spot/20 @B.1\n- Wash/30 @B.2');
    expect(lines(rig, { together: 'by-type', spareAfterGroup: 40 })).toEqual([
      'f1 address 1:1',
      'f2 address 1:81',
      'f3 address 1:21',
      'f4 address 1:111',
    ]);
  });

  it('[PL20] says which group no universe holds whole', () => {
    const rig = rigOf('- Spot/100 x7 @Bridge.1\n- Dim/1 x3 @Boom.1');
    const made = allocatePlan(rig, idsOf(rig), { together: 'by-position' });
    expect(made).toMatchObject({ value: { opened: 2, split: ['Bridge'] } });
  });

  it('[PL20] keeps the order they were chosen in', () => {
    const rig = rigOf('1:101 House/12\n- Spot/60\n- Spot/50\n- Spot/30\n- Spot/30');
    expect(lines(rig, { together: 'in-order' }, 'f5 f2 f4 f3')).toEqual([
      'f5 address 1:1',
      'f2 address 1:31',
      'f4 address 1:113',
      'f3 address 1:143',
    ]);
  });

  it('[PL20] starts on the grid and keeps slots free at the end', () => {
    const rig = rigOf('- Spot/33 x3\n- Dim/12 x2');
    expect(placed(rig, { grid: 32, spareAtEnd: 300, together: 'in-order' })).toEqual([
      'f1 1:1 Spot/33',
      'f2 1:65 Spot/33',
      'f3 1:129 Spot/33',
      'f4 1:193 Dim/12',
      'f5 2:1 Dim/12',
    ]);
    // 512 slots from slot 1 on are on any grid, though no multiple of ten.
    expect(placed(rigOf('- Wall/512 x2'), { grid: 10 })).toEqual(['f1 1:1 Wall/512', 'f2 2:1 Wall/512']);
  });

  it('[PL20] keeps to the universes that are allowed', () => {
    const rig = rigOf('2:1 House/400\n- Spot/120 x2\n- Spot/100');
    const options = { allowed: [range(2, 4), range(7)], barred: [range(3)] };
    expect(lines(rig, options, 'f2 f3 f4')).toEqual(['f2 address 4:1', 'f3 address 4:121', 'f4 address 2:401']);
    const few = { allowed: [range(2)] };
    expect(lines(rig, few, 'f2 f3 f4')).toEqual({ code: 'no-room', fixture: 'f2', slots: 120 });
  });

  it('[PL20] lets groups go where there are too few universes for whole ones', () => {
    const rig = rigOf('1:200 House/113\n- Spot/150 x2 @Bridge.1');
    const made = allocatePlan(rig, ids('f2 f3'), { together: 'by-position', allowed: [range(1)] });
    expect(made).toMatchObject({ value: { universes: [1], opened: 0, split: ['Bridge'] } });
  });

  it('[PL20] keeps the breaks of a unit end to end, or lets each lie where it fits', () => {
    const rig = rigOf('1:51 House/450\n- Bar/40+30');
    expect(lines(rig, {}, 'f2')).toEqual(['f2 address 2:1', 'f2 address2 2:41']);
    expect(lines(rig, { breaks: 'anywhere' }, 'f2')).toEqual(['f2 address 1:1', 'f2 address2 2:1']);
  });

  it('[PL20] keeps units together that act as one, and the locked where they are', () => {
    const rig = rigOf('3:1 Spot/16 #1\n3:1 Spot/16 #1\n3:99 Spot/16 #2 !Ona\n3:200 Spot/16 #3');
    expect(lines(rig, { allowed: [range(1)] })).toEqual(['f1 address 1:1', 'f2 address 1:1', 'f4 address 1:17']);
    expect(lines(rig, {}, 'f3')).toEqual({ code: 'held', fixtures: ['f3'] });
  });

  it('[PL20] refuses with a code', () => {
    const rig = rigOf('- Ghost/?\n- Wall/513\n- Bar/300+300\n1:1 Spot/16');
    expect(lines(rig, {}, 'f1')).toEqual({ code: 'mode-unknown', fixture: 'f1' });
    expect(lines(rig, {}, 'f2')).toEqual({ code: 'too-wide', fixture: 'f2', slots: 513 });
    expect(lines(rig, {}, 'f3')).toEqual({ code: 'too-wide', fixture: 'f3', slots: 600 });
    expect(lines(rig, {}, 'f4')).toEqual({ code: 'changes-nothing' });
    expect(lines(rig, { spareAtEnd: 500 }, 'f4')).toEqual({ code: 'no-room', fixture: 'f4', slots: 16 });
    expect(lines(rig, { grid: 0 }, 'f4')).toEqual({ code: 'bad-number', value: 0 });
    expect(lines(rig, { spareAtEnd: 512 }, 'f4')).toEqual({ code: 'bad-number', value: 512 });
    expect(lines(rig, {}, 'gone')).toEqual({ code: 'no-such-fixture', fixture: 'gone' });
    expect(allocatePlan(rig, [])).toEqual({ ok: false, error: { code: 'nothing-chosen' } });
  });

  const randomOptions = (rng: Rng): Partial<AllocateOptions> => ({
    breaks: rng.pick(['in-one-universe', 'anywhere']),
    together: rng.pick(['as-fits', 'by-position', 'by-run', 'by-type', 'in-order']),
    grid: rng.pick([1, 1, 10, 32, 7]),
    spareAtEnd: rng.pick([0, 0, 12]),
    spareAfterGroup: rng.pick([0, 20]),
    allowed: rng.int(3) === 0 ? [range(2, 40)] : [],
    barred: rng.int(3) === 0 ? [range(3)] : [],
    steps: 100_000,
  });

  it('[PL21] [LK2] never overlaps, crosses slot 512, leaves the grid or moves what is locked or not chosen; twice is once', () => {
    let plans = 0;
    for (let seed = 1; seed <= 400; seed++) {
      const rng = seededRng(seed);
      const bare = randomRig(seed, { fixtures: 30, universes: 3 });
      const locked = new Set(idsOf(bare).filter(() => rng.int(5) === 0));
      const rig = withLocks(bare, locked);
      const able = idsOf(rig).filter((id) => widest(rig, id) <= 400 && rng.int(3) > 0);
      const options = randomOptions(rng);
      const made = allocatePlan(rig, able, options);
      const sameIds = options.together === 'in-order' ? able : [...able].reverse();
      expect(allocatePlan(shuffled(rig), sameIds, options), `seed ${seed}`).toEqual(made);
      if (!made.ok) continue;
      plans += 1;
      const after = applyEdits(rig, made.value.plan.edits);
      const moved = new Set(made.value.plan.edits.flatMap((edit) => (edit.kind === 'set-cell' ? [edit.fixture] : [])));
      for (const id of moved) expect(locked.has(id) || !able.includes(id), `seed ${seed}: ${id}`).toBe(false);
      mustLieWell(rig, after, able, options, `seed ${seed}`);
      expect(allocatePlan(after, able, options), `seed ${seed}`).toEqual({
        ok: false,
        error: { code: 'changes-nothing' },
      });
      const { opened, bounds, bestFit } = made.value;
      expect(opened).toBeGreaterThanOrEqual(bounds.proven);
      expect(bounds.proven).toBeGreaterThanOrEqual(bounds.l2);
      if (bestFit !== null && made.value.split.length === 0) expect(opened).toBeLessThanOrEqual(bestFit);
    }
    expect(plans).toBeGreaterThan(250);
  });

  const widest = (rig: Rig, id: FixtureId) => {
    const fixture = getRow(rig.fixtures, id);
    const mode = fixture && modeOf(rig, fixture);
    return mode === undefined ? 999 : mode.footprints.reduce((total, slots) => total + slots, 0);
  };

  function mustLieWell(before: Rig, rig: Rig, able: FixtureId[], options: Partial<AllocateOptions>, label: string) {
    const free = able.filter((id) => !standsLocked(before, id));
    const open = new Set([...universesIn(openRanges([range(1, 60)], options.barred ?? []))]);
    const others = new Set(
      idsOf(rig)
        .filter((id) => !free.includes(id))
        .flatMap((id) => slotsOf(rig, id)),
    );
    const owners = new Map<number, FixtureId>();
    for (const id of free) {
      mustFit(rig, id, options, label);
      for (const claim of slotRuns(rig, rowOf(rig, id))) expect(open.has(claim.universe), label).toBe(true);
      for (const slot of slotsOf(rig, id)) {
        expect(others.has(slot), `${label}: ${id} on ${slot}`).toBe(false);
        const owner = owners.get(slot);
        if (owner !== undefined) expect(areOne(rig, owner, id), `${label}: ${owner} ${id}`).toBe(true);
        else owners.set(slot, id);
      }
    }
  }

  function mustFit(rig: Rig, id: FixtureId, options: Partial<AllocateOptions>, label: string) {
    const fixture = rowOf(rig, id);
    const claims = slotRuns(rig, fixture);
    for (const claim of claims) {
      expect(claim.over, label).toBe(0);
      expect(claim.last, label).toBeLessThanOrEqual(512 - (options.spareAtEnd ?? 0));
    }
    const [first] = fixture.addresses.filter((address) => address !== null);
    if (first !== undefined) expect((slotOf(first) - 1) % (options.grid ?? 1), label).toBe(0);
    const universes = new Set(claims.map(({ universe }) => universe));
    if (options.breaks === 'in-one-universe') expect(universes.size, label).toBeLessThanOrEqual(1);
  }

  const rowOf = (rig: Rig, id: FixtureId) => {
    const fixture = getRow(rig.fixtures, id);
    if (fixture === undefined) throw new Error(`no fixture ${id}`);
    return fixture;
  };

  const areOne = (rig: Rig, a: FixtureId, b: FixtureId) => {
    const [one, other] = [getRow(rig.fixtures, a), getRow(rig.fixtures, b)];
    if (one === undefined || other === undefined) return false;
    const sharer = (fixture: typeof one) => ({ fixture, modeKey: modeId(fixture.type, fixture.mode) });
    return a !== b && actAsOne(sharer(one), sharer(other));
  };

  /** Locked itself, or acting as one with somebody who is chosen and locked. */
  const standsLocked = (rig: Rig, id: FixtureId) =>
    [...rowsOf(rig.fixtures)].some((other) => {
      const isIt = other.id === id || (other.addresses.length > 0 && areOne(rig, id, other.id));
      return isIt && other.lock !== '';
    });
});
