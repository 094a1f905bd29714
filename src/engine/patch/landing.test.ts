import { describe, expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import { getRow, rowsOf } from '#base/table.ts';
import { ids, shown } from '#tests/support/planned.ts';
import { randomRig } from '#tests/support/random-rig.ts';
import { addressOf, rigOf } from '#tests/support/rig-shorthand.ts';
import { slotRuns } from '../address/claim.ts';
import { createOccupancy } from '../address/occupancy-index.ts';
import { actAsOne } from '../address/unit.ts';
import { checkRig } from '../check/check-rig.ts';
import { absolute, SLOTS, slotOf, universeOf } from '../model/address.ts';
import { applyEdits } from '../model/apply-edits.ts';
import type { Fixture } from '../model/fixture.ts';
import { type FixtureId, fixtureId, modeId } from '../model/ids.ts';
import type { Rig } from '../model/rig.ts';
import { type Landing, landingOf } from './landing.ts';
import { type BreakOf, moveBreakPlan } from './move-break-plan.ts';

const sharer = (fixture: Fixture) => ({ fixture, modeKey: modeId(fixture.type, fixture.mode) });

/** Who the findings of the rig after the move name in the slots where the break has come to sit. */
function namedThere(after: Rig, moved: BreakOf, { at, slots }: Landing): FixtureId[] {
  const fixture = getRow(after.fixtures, moved.fixture);
  const named = new Set<FixtureId>();
  for (const finding of checkRig(after)) {
    if (finding.rule !== 'slots-claimed-twice' || finding.run.universe !== universeOf(at)) continue;
    if (finding.run.last < slotOf(at) || finding.run.first > slotOf(at) + slots - 1) continue;
    if (finding.fixtures.length === 1 && finding.fixtures[0] === moved.fixture) named.add(moved.fixture);
    for (const id of finding.fixtures) {
      const other = getRow(after.fixtures, id);
      const asOne = other && fixture && (id === fixture.id || actAsOne(sharer(other), sharer(fixture)));
      if (!asOne) named.add(id);
    }
  }
  return [...named].sort();
}

describe('moving one break', () => {
  it('[PL28] says exactly whom the findings name there afterwards', () => {
    let met = 0;
    let refused = 0;
    for (let seed = 1; seed <= 400; seed++) {
      const rng = seededRng(seed);
      const rig = randomRig(seed, { fixtures: 24, universes: 2 });
      const blocks = [...rowsOf(rig.fixtures)].flatMap((fixture) =>
        slotRuns(rig, fixture).map(({ part }) => ({ fixture: fixture.id, part })),
      );
      if (blocks.length === 0) continue;
      const moved = rng.pick(blocks);
      const at = absolute(1 + rng.int(2), rng.int(3) === 0 ? SLOTS - rng.int(30) : 1 + rng.int(SLOTS));
      const landing = landingOf(rig, createOccupancy(rig), moved, at);
      const plan = moveBreakPlan(rig, moved, at);
      if (landing === undefined) throw new Error(`seed ${seed}: ${moved.fixture} is gone`);
      expect(!plan.ok && plan.error.code === 'crosses-end', `seed ${seed}`).toBe(landing.over > 0);
      if (!plan.ok) {
        refused++;
        continue;
      }
      const named = namedThere(applyEdits(rig, plan.value.edits), moved, landing);
      expect([...landing.meets].sort(), `seed ${seed}`).toEqual(named);
      if (named.length > 0) met++;
    }
    expect(met).toBeGreaterThan(50);
    expect(refused).toBeGreaterThan(10);
  });

  it('[PL28] leaves everybody else and every other break where they were', () => {
    for (let seed = 1; seed <= 200; seed++) {
      const rng = seededRng(seed);
      const rig = randomRig(seed, { fixtures: 20, universes: 3 });
      const [moved] = [...rowsOf(rig.fixtures)].filter(({ addresses }) => addresses.length > 1);
      if (moved === undefined) continue;
      const part = 1 + rng.int(moved.addresses.length);
      const plan = moveBreakPlan(rig, { fixture: moved.id, part }, absolute(4, 1));
      if (!plan.ok) continue;
      const after = applyEdits(rig, plan.value.edits);
      for (const before of rowsOf(rig.fixtures)) {
        const goes = before.id === moved.id || actAsOne(sharer(before), sharer(moved));
        const expected = before.addresses.map((address, n) => (goes && n === part - 1 ? absolute(4, 1) : address));
        expect(getRow(after.fixtures, before.id)?.addresses, `seed ${seed}`).toEqual(expected);
      }
    }
  });

  const rig = rigOf('1:1 Spot/16 #1\n1:1 Spot/16 #1\n2:1+3:1 Bar/4+8\n1:100 Haze/2\n1:40 Spot/16 #1');
  const landing = (id: string, part: number, at: string) =>
    landingOf(rig, createOccupancy(rig), { fixture: fixtureId(id), part }, addressOf(at));

  it('[PL28] takes those along that act as one', () => {
    expect(shown(moveBreakPlan(rig, { fixture: fixtureId('f1'), part: 1 }, addressOf('1:90')))).toEqual([
      'f1 address 1:90',
      'f2 address 1:90',
    ]);
    expect(landing('f1', 1, '1:90')?.meets).toEqual(ids('f4'));
    expect(landing('f1', 1, '1:9')?.meets).toEqual([]);
    expect(landing('f5', 1, '1:1')?.meets).toEqual([]);
    expect(landing('f5', 1, '1:2')?.meets).toEqual(ids('f1 f2'));
  });

  it('[PL28] moves one break of several, and meets its own others', () => {
    expect(shown(moveBreakPlan(rig, { fixture: fixtureId('f3'), part: 2 }, addressOf('2:10')))).toEqual([
      'f3 address2 2:10',
    ]);
    expect(landing('f3', 2, '2:3')?.meets).toEqual(ids('f3'));
    expect(landing('f3', 2, '2:506')).toEqual({ at: addressOf('2:506'), slots: 8, over: 1, meets: [] });
    expect(shown(moveBreakPlan(rig, { fixture: fixtureId('f3'), part: 2 }, addressOf('2:506')))).toEqual({
      code: 'crosses-end',
      fixture: 'f3',
      over: 1,
    });
    expect(shown(moveBreakPlan(rig, { fixture: fixtureId('gone'), part: 1 }, addressOf('2:1')))).toEqual({
      code: 'no-such-fixture',
      fixture: 'gone',
    });
  });
});
