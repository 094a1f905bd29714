import { describe, expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import { clashes, ids, isClash, shown, shuffled, slotsOf, someOf } from '#tests/support/planned.ts';
import { idsOf, randomRig } from '#tests/support/random-rig.ts';
import { addressOf, printFinding, rigOf } from '#tests/support/rig-shorthand.ts';
import { checkRig } from '../check/check-rig.ts';
import { absolute } from '../model/address.ts';
import { applyEdits } from '../model/apply-edits.ts';
import { placePlan } from './place-plan.ts';

describe('place', () => {
  const from = (text: string) => ({ from: addressOf(text), breaks: 'in-one-universe' as const });

  it('[PL1] goes on in order from the first free room, never across the end', () => {
    const rig = rigOf('2:1 Spot/16 x2\n- Spot/16 x3\n2:40 Dim/1\n2:57 Spot/440');
    expect(shown(placePlan(rig, { fixtures: ids('f4 f3 f5'), ...from('2:1') }))).toEqual([
      'f4 address 2:41',
      'f3 address 2:497',
      'f5 address 3:1',
    ]);
  });

  it('[PL1] counts what the chosen hold as free', () => {
    const rig = rigOf('1:1 Spot/16\n1:21 Spot/16');
    expect(shown(placePlan(rig, { fixtures: ids('f2 f1'), ...from('1:1') }))).toEqual([
      'f2 address 1:1',
      'f1 address 1:17',
    ]);
  });

  it('[PL1] keeps the breaks of a fixture in one universe, or not', () => {
    const rig = rigOf('1:1 Fill/500\n- Bar/10+10');
    const request = { fixtures: ids('f2'), from: addressOf('1:1') };
    expect(shown(placePlan(rig, { ...request, breaks: 'in-one-universe' }))).toEqual([
      'f2 address 2:1',
      'f2 address2 2:11',
    ]);
    expect(shown(placePlan(rig, { ...request, breaks: 'anywhere' }))).toEqual(['f2 address 1:501', 'f2 address2 2:1']);
  });

  it('[PL1] never overlaps, never crosses slot 512, is deterministic and does not depend on the order of rows', () => {
    for (let seed = 1; seed <= 250; seed++) {
      const rng = seededRng(seed);
      const rig = randomRig(seed, { fixtures: 30, universes: 2 });
      const breaks = rng.pick(['in-one-universe', 'anywhere'] as const);
      const request = { fixtures: someOf(rng, rig), from: absolute(1 + rng.int(3), 1 + rng.int(512)), breaks };
      const plan = placePlan(rig, request);
      expect(placePlan(shuffled(rig), request)).toEqual(plan);
      if (!plan.ok) {
        expect(['mode-unknown', 'too-wide', 'changes-nothing', 'locked']).toContain(plan.error.code);
        continue;
      }
      const placed = applyEdits(rig, plan.value.edits);
      const moved = new Set(request.fixtures);
      const others = new Set(
        idsOf(rig)
          .filter((id) => !moved.has(id))
          .flatMap((id) => slotsOf(placed, id)),
      );
      const own = [...moved].flatMap((id) => slotsOf(placed, id));
      expect(
        own.some((slot) => others.has(slot) || slot < request.from),
        `seed ${seed}`,
      ).toBe(false);
      expect(new Set(own).size, `seed ${seed}`).toBe(own.length);
      const before = new Set(clashes(rig));
      const fresh = checkRig(placed)
        .filter(isClash)
        .filter(({ fixtures }) => fixtures.some((id) => moved.has(id)));
      expect(
        fresh.map(printFinding).filter((line) => !before.has(line)),
        `seed ${seed}`,
      ).toEqual([]);
    }
  });

  it('[PL1] refuses with a code', () => {
    const rig = rigOf('- Ghost/?\n- Wall/513\n- Spot/16\n- Bar/300+300');
    const place = (names: string, at = '1:1') => shown(placePlan(rig, { fixtures: ids(names), ...from(at) }));
    expect(place('f1')).toEqual({ code: 'mode-unknown', fixture: 'f1' });
    expect(place('f2')).toEqual({ code: 'too-wide', fixture: 'f2', slots: 513 });
    expect(place('f4')).toEqual({ code: 'too-wide', fixture: 'f4', slots: 600 });
    expect(place('f3', '63999:500')).toEqual({ code: 'no-room', fixture: 'f3', slots: 16 });
    expect(place('gone')).toEqual({ code: 'no-such-fixture', fixture: 'gone' });
    expect(shown(placePlan(rig, { fixtures: [], ...from('1:1') }))).toEqual({ code: 'nothing-chosen' });
  });
});
