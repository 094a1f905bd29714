import { describe, expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import { getRow } from '#base/table.ts';
import { after, ids, shown, someOf } from '#tests/support/planned.ts';
import { randomRig } from '#tests/support/random-rig.ts';
import { addressOf, printRig, rigOf } from '#tests/support/rig-shorthand.ts';
import { applyEdits } from '../model/apply-edits.ts';
import { fixtureId } from '../model/ids.ts';
import { movePlan } from './move-plan.ts';
import { swapPlan } from './swap-plan.ts';
import { takeRoomPlan } from './take-room-plan.ts';

describe('move, swap and take room', () => {
  const rig = rigOf('1:1 Spot/16 x3\n2:1+3:1 Bar/4+8\n- Haze/2');

  it('[PL2] takes a room whole, or says what does not fit', () => {
    expect(shown(takeRoomPlan(rig, fixtureId('f4'), addressOf('5:501')))).toEqual([
      'f4 address 5:501',
      'f4 address2 5:505',
    ]);
    expect(shown(takeRoomPlan(rig, fixtureId('f4'), addressOf('5:502')))).toEqual({
      code: 'crosses-end',
      fixture: 'f4',
      over: 1,
    });
  });

  it('[PL3] keeps distances, by a number or to an address, and leaves the unpatched alone', () => {
    expect(shown(movePlan(rig, ids('f2 f4 f5'), { by: 100 }))).toEqual([
      'f2 address 1:117',
      'f4 address 2:101',
      'f4 address2 3:101',
    ]);
    expect(shown(movePlan(rig, ids('f2 f3'), { to: addressOf('4:1') }))).toEqual(['f2 address 4:1', 'f3 address 4:17']);
  });

  it('[PL3] by a number and back is nothing', () => {
    const rng = seededRng(9);
    for (let seed = 1; seed <= 60; seed++) {
      const random = randomRig(seed, { fixtures: 20, universes: 3 });
      const chosen = someOf(rng, random);
      const there = movePlan(random, chosen, { by: 700 });
      if (!there.ok) continue;
      const moved = applyEdits(random, there.value.edits);
      const back = movePlan(moved, chosen, { by: -700 });
      const clean = back.ok ? applyEdits(moved, back.value.edits) : moved;
      for (const id of chosen)
        expect(getRow(clean.fixtures, id)?.addresses).toEqual(getRow(random.fixtures, id)?.addresses);
    }
  });

  it('[PL3] refuses an address that does not exist, and a selection without one', () => {
    expect(shown(movePlan(rig, ids('f1 f2'), { by: -1 }))).toEqual({
      code: 'out-of-range',
      fixture: 'f1',
      field: 'address',
      value: 0,
    });
    expect(shown(movePlan(rig, ids('f5'), { by: 1 }))).toEqual({ code: 'not-patched' });
    expect(shown(movePlan(rig, ids('f1'), { by: 0.5 }))).toEqual({ code: 'bad-number', value: 0.5 });
    expect(shown(movePlan(rig, ids('f1'), { by: 0 }))).toEqual({ code: 'changes-nothing' });
  });

  it('[PL4] swaps all breaks; twice is nothing', () => {
    const once = swapPlan(rig, fixtureId('f1'), fixtureId('f4'));
    expect(shown(once)).toEqual(['f1 address 2:1', 'f1 address2 3:1', 'f4 address 1:1', 'f4 address2 -']);
    const swapped = once.ok ? applyEdits(rig, once.value.edits) : rig;
    expect(after(swapped, swapPlan(swapped, fixtureId('f1'), fixtureId('f4')))).toEqual(printRig(rig));
    expect(shown(swapPlan(rig, fixtureId('f5'), fixtureId('f5')))).toEqual({ code: 'changes-nothing' });
  });
});
