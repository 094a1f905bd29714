import { describe, expect, it } from 'vitest';
import type { Result } from '#base/result.ts';
import { type Rng, seededRng } from '#base/rng.ts';
import { getRow, rowsOf } from '#base/table.ts';
import { ids, isClash, shown, someOf } from '#tests/support/planned.ts';
import { randomRig } from '#tests/support/random-rig.ts';
import { addressOf, rigOf } from '#tests/support/rig-shorthand.ts';
import { checkRig } from '../check/check-rig.ts';
import { type Absolute, absolute } from '../model/address.ts';
import { applyEdits } from '../model/apply-edits.ts';
import type { Plan } from '../model/edit.ts';
import { ADDRESS_FIELDS } from '../model/field.ts';
import type { Finding } from '../model/finding.ts';
import { type FixtureId, fixtureId } from '../model/ids.ts';
import { isLocked, lockedAgainst } from '../model/locked.ts';
import type { Rig } from '../model/rig.ts';
import { allocatePlan } from './allocate/allocate-plan.ts';
import { clearClash } from './clear-clash.ts';
import { fillDownPlan, seriesPlan } from './fill-plans.ts';
import { lockPlan, unlockPlan } from './lock-plan.ts';
import { moveBreakPlan } from './move-break-plan.ts';
import { movePlan } from './move-plan.ts';
import { placePlan } from './place-plan.ts';
import type { PlanRefusal } from './plan-refusal.ts';
import { previewTaking } from './preview-taking.ts';
import { repairPlan } from './repair/repair-plan.ts';
import { swapPlan } from './swap-plan.ts';
import { takeRoomPlan } from './take-room-plan.ts';

type Planned = Result<Plan, PlanRefusal>;

const f = fixtureId;
const LOCKED_F1 = { code: 'locked', fixture: 'f1' };

describe('locks', () => {
  const rig = rigOf('1:1 Spot/16 !focused\n1:20 Spot/16\n- Spot/16');

  it('[LK1] any text locks, white space does not, and a channel’s twin stands with the locked one', () => {
    expect(isLocked({ lock: 'x' })).toBe(true);
    expect(isLocked({ lock: ' \t' })).toBe(false);
    const twins = rigOf('1:1 Spot/16 #1\n1:1 Spot/16 #1 !Ona\n1:10 Spot/16 #2');
    const repair = repairPlan(twins);
    expect(repair.ok && shown({ ok: true, value: repair.value.plan })).toEqual(['f3 address 1:17']);
    expect(shown(moveBreakPlan(twins, { fixture: f('f1'), part: 1 }, addressOf('2:1')))).toEqual({
      code: 'locked',
      fixture: 'f2',
    });
  });

  it('[LK2] who is told to move a locked unit is refused by name', () => {
    const some = ids('f2 f1');
    expect(shown(placePlan(rig, { fixtures: some, from: absolute(1, 1), breaks: 'in-one-universe' }))).toEqual(
      LOCKED_F1,
    );
    expect(shown(movePlan(rig, some, { by: 1 }))).toEqual(LOCKED_F1);
    expect(shown(swapPlan(rig, f('f2'), f('f1')))).toEqual(LOCKED_F1);
    expect(shown(takeRoomPlan(rig, f('f1'), absolute(2, 1)))).toEqual(LOCKED_F1);
    expect(shown(moveBreakPlan(rig, { fixture: f('f1'), part: 1 }, addressOf('2:1')))).toEqual(LOCKED_F1);
    expect(shown(fillDownPlan(rig, some, ['address']))).toEqual(LOCKED_F1);
    expect(shown(seriesPlan(rig, some, ['address']))).toEqual(LOCKED_F1);
    // Whatever leaves its address alone is allowed.
    expect(shown(fillDownPlan(rig, some, ['purpose', 'mode']))).toEqual({ code: 'changes-nothing' });
    expect(shown(takeRoomPlan(rig, f('f1'), absolute(1, 1)))).toEqual({ code: 'changes-nothing' });
    expect(shown(placePlan(rig, { fixtures: ids('f3'), from: absolute(1, 1), breaks: 'in-one-universe' }))).toEqual([
      'f3 address 1:36',
    ]);
  });

  it('[LK2] in a clash the locked one stays, however much dearer that is; two of them hold it', () => {
    const clash = rigOf('1:1 Spot/16 #5\n1:1 Spot/16 #5\n1:10 Spot/16 #6 !Ona');
    const [finding] = checkRig(clash).filter(isClash);
    expect(finding && shown(clearClash(clash, finding))).toEqual(['f1 address 1:26', 'f2 address 1:26']);
    const both = rigOf('1:1 Spot/16 !Ona\n1:10 Spot/16 !Ben');
    const [held] = checkRig(both).filter(isClash);
    expect(held && shown(clearClash(both, held))).toEqual({ code: 'held', fixtures: ['f1', 'f2'] });
    expect(repairPlan(both)).toEqual({ ok: false, error: { code: 'held', fixtures: ['f1', 'f2'] } });
    const past = rigOf('1:505 Spot/16 !Ona');
    const [over] = checkRig(past).filter(isClash);
    expect(over && shown(clearClash(past, over))).toEqual(LOCKED_F1);
  });

  it('[LK2] taking a type moves others out of the way of the locked, and says what is left', () => {
    const grown = rigOf('1:1 Spot/16 !Ona\n1:17 Spot/16\n1:33 Spot/16 !Ben');
    const edits = [
      { kind: 'set-mode', type: 'Spot', mode: '16', footprints: [20], pin: null } as const,
      { kind: 'set-cell', fixture: f('f2'), field: 'purpose', value: 'back' } as const,
    ];
    const { moves, left } = previewTaking(grown, { name: 'take-type', edits });
    expect(moves).toEqual([{ kind: 'set-cell', fixture: 'f2', field: 'address', value: 53 }]);
    expect(left).toEqual([]);
  });

  it('[LK3] a direct edit of a locked address is found, and only that', () => {
    const edit = (id: string, value: number | null) =>
      ({ kind: 'set-cell', fixture: f(id), field: 'address', value }) as const;
    expect(lockedAgainst(rig, [edit('f2', 5), edit('f1', null)])).toBe('f1');
    expect(lockedAgainst(rig, [edit('f1', 1), edit('gone', 4)])).toBeUndefined();
    const unlocks = { kind: 'set-cell', fixture: f('f1'), field: 'lock', value: null } as const;
    // Judged by the rig before: unlocking and moving are two steps.
    expect(lockedAgainst(rig, [unlocks, edit('f1', 9)])).toBe('f1');
    expect(lockedAgainst(applyEdits(rig, [unlocks]), [edit('f1', 9)])).toBeUndefined();
  });

  it('[LK4] locks those that are free with a reason, keeps the reasons there are, and frees again', () => {
    expect(shown(lockPlan(rig, ids('f1 f2 f3'), ' Ona Reeve '))).toEqual(['f2 lock Ona Reeve', 'f3 lock Ona Reeve']);
    expect(shown(lockPlan(rig, ids('f1'), 'Ona'))).toEqual({ code: 'changes-nothing' });
    expect(shown(lockPlan(rig, ids('f2'), ' '))).toEqual({ code: 'no-reason' });
    expect(shown(unlockPlan(rig, ids('f1 f2')))).toEqual(['f1 lock -']);
    expect(shown(unlockPlan(rig, ids('f2')))).toEqual({ code: 'changes-nothing' });
  });

  it('[LK2] no plan moves a locked unit, whatever it is asked on any rig', () => {
    let moving = 0;
    let refused = 0;
    for (let seed = 1; seed <= 400; seed++) {
      const rng = seededRng(seed);
      const rig = randomRig(seed, { fixtures: 14, universes: 2 });
      for (const [what, made] of everyPlan(rng, rig)) {
        if (!made.ok) {
          refused += Number(made.error.code === 'locked' || made.error.code === 'held');
          continue;
        }
        const after = applyEdits(rig, made.value.edits);
        moving += Number(made.value.edits.some((edit) => edit.kind === 'set-cell' && edit.field === 'address'));
        for (const { id, addresses, lock } of rowsOf(rig.fixtures)) {
          if (lock !== '')
            expect(getRow(after.fixtures, id)?.addresses, `seed ${seed}, ${what}: ${id}`).toEqual(addresses);
        }
      }
    }
    expect(moving).toBeGreaterThan(800);
    expect(refused).toBeGreaterThan(500);
  });

  function everyPlan(rng: Rng, rig: Rig): readonly (readonly [string, Planned])[] {
    const some = someOf(rng, rig);
    const [one, other] = [some[0] as FixtureId, some[some.length - 1] as FixtureId];
    const at = (1 + rng.int(1024)) as Absolute;
    const taken = (made: Result<{ readonly plan: Plan }, PlanRefusal>): Planned =>
      made.ok ? { ok: true, value: made.value.plan } : made;
    const fields = [rng.pick(ADDRESS_FIELDS), 'type', 'mode'] as const;
    const mode = { kind: 'set-mode', type: 'Spot', mode: '16', footprints: [40], pin: null } as const;
    const taking = previewTaking(rig, { name: 'take-type', edits: [mode] });
    return [
      ['place', placePlan(rig, { fixtures: some, from: at, breaks: 'anywhere' })],
      ['move', movePlan(rig, some, { by: rng.int(20) - 10 })],
      ['swap', swapPlan(rig, one, other)],
      ['take room', takeRoomPlan(rig, one, at)],
      ['move break', moveBreakPlan(rig, { fixture: one, part: 1 + rng.int(2) }, at)],
      ['fill down', fillDownPlan(rig, some, fields)],
      ['series', seriesPlan(rig, some, fields)],
      ['allocate', taken(allocatePlan(rig, some, { breaks: 'anywhere', steps: 1000 }))],
      ['repair', taken(repairPlan(rig, { steps: 10_000 }))],
      ['take type', { ok: true, value: { name: 'take-type', edits: taking.moves } }],
      ...checkRig(rig)
        .filter(isClash)
        .map((finding: Finding) => ['clear clash', clearClash(rig, finding)] as const),
    ];
  }
});
