import { describe, expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import { getRow } from '#base/table.ts';
import { ids, shown, someOf } from '#tests/support/planned.ts';
import { randomRig } from '#tests/support/random-rig.ts';
import { rigOf } from '#tests/support/rig-shorthand.ts';
import { slotRuns } from '../address/claim.ts';
import { absolute } from '../model/address.ts';
import { applyEdits } from '../model/apply-edits.ts';
import { fillDownPlan, seriesPlan } from './fill-plans.ts';

describe('fill', () => {
  it('[PL7] copies cells down', () => {
    const rig = rigOf('1:1 Spot/16 #1 @LX1.1\n- Wash/8 #2\n- Spot/16');
    expect(shown(fillDownPlan(rig, ids('f1 f2 f3'), ['type', 'mode']))).toEqual(['f2 type Spot', 'f2 mode 16']);
    expect(shown(fillDownPlan(rig, ids('f1'), ['type']))).toEqual({ code: 'changes-nothing' });
  });

  it('[PL8] goes on: channel, unit, address by footprint and into the next universe', () => {
    const rig = rigOf('1:480 Spot/16 #7 @LX1.4\n- Spot/16\n- Wash/8\n- Spot/16');
    expect(shown(seriesPlan(rig, ids('f1 f2 f3 f4'), ['channel', 'unit', 'address', 'position']))).toEqual([
      'f2 channel 8',
      'f3 channel 9',
      'f4 channel 10',
      'f2 unit 5',
      'f3 unit 6',
      'f4 unit 7',
      'f2 position LX1',
      'f3 position LX1',
      'f4 position LX1',
      'f2 address 1:496',
      'f3 address 2:1',
      'f4 address 2:9',
    ]);
  });

  it.each([
    ['4', '5'],
    ['09', '10'],
    ['L9', 'L10'],
    ['4A', '4B'],
    ['b', 'c'],
  ])('[PL8] after unit %s comes %s', (unit, next) => {
    const rig = rigOf(`- S/1 @X.${unit}\n- S/1 @X.`);
    expect(shown(seriesPlan(rig, ids('f1 f2'), ['unit']))).toEqual([`f2 unit ${next}`]);
  });

  it('[PL8] lays several breaks end to end, one fixture after the other', () => {
    const rig = rigOf('1:500+1:504 Bar/4+5\n- Bar/4+5\n- Bar/4+5');
    expect(shown(seriesPlan(rig, ids('f1 f2 f3'), ['address', 'address2']))).toEqual([
      'f2 address 2:1',
      'f2 address2 2:5',
      'f3 address 2:10',
      'f3 address2 2:14',
    ]);
  });

  it('[PL8] makes no series of what starts none', () => {
    const rig = rigOf('- Spot/16 @X.left\n- Spot/16\n63999:500 Spot/13');
    expect(shown(seriesPlan(rig, ids('f1 f2'), ['channel']))).toEqual({ code: 'no-series', field: 'channel' });
    expect(shown(seriesPlan(rig, ids('f1 f2'), ['unit']))).toEqual({ code: 'no-series', field: 'unit' });
    expect(shown(seriesPlan(rig, ids('f1 f2'), ['address']))).toEqual({ code: 'no-series', field: 'address' });
    expect(shown(seriesPlan(rig, ids('f3 f1'), ['address']))).toMatchObject({ code: 'out-of-range', fixture: 'f1' });
  });

  it('[PL8] never overlaps within the series, never crosses slot 512', () => {
    for (let seed = 1; seed <= 150; seed++) {
      const rng = seededRng(seed);
      const rig = randomRig(seed, { fixtures: 20, universes: 2 });
      const chosen = [...new Set(someOf(rng, rig))];
      const plan = seriesPlan(rig, chosen, ['address']);
      if (!plan.ok) continue;
      const filled = applyEdits(rig, plan.value.edits);
      const firstBreaks = chosen.flatMap((id) => {
        const fixture = getRow(filled.fixtures, id);
        return fixture === undefined
          ? []
          : slotRuns(filled, fixture)
              .filter(({ part }) => part === 1)
              .map((run) => ({ id, run }));
      });
      const slots = firstBreaks.flatMap(({ run }) =>
        Array.from({ length: run.last - run.first + 1 }, (_, i) => absolute(run.universe, run.first + i)),
      );
      expect(new Set(slots).size, `seed ${seed}`).toBe(slots.length);
      expect(
        firstBreaks.some(({ id, run }) => run.over > 0 && id !== chosen[0]),
        `seed ${seed}`,
      ).toBe(false);
    }
  });
});
