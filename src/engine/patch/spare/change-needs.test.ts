import { describe, expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import { getRow, rowsOf } from '#base/table.ts';
import { ids, isClash, shuffled } from '#tests/support/planned.ts';
import { idsOf, randomRig } from '#tests/support/random-rig.ts';
import { rigOf } from '#tests/support/rig-shorthand.ts';
import { checkRig } from '../../check/check-rig.ts';
import { SLOTS } from '../../model/address.ts';
import { modeId } from '../../model/ids.ts';
import type { Mode, Rig } from '../../model/rig.ts';
import { needsOfMode, needsOfMore } from './change-needs.ts';
import { roomFor } from './room-for.ts';

const modeIn = (rig: Rig, type: string, mode: string): Mode => {
  const known = getRow(rig.modes, modeId(type, mode));
  if (known === undefined) throw new Error(`no ${type} ${mode}`);
  return known;
};

describe('what a change would need', () => {
  it('[PL30] more units of several modes: where they fit, and what is new', () => {
    const rig = rigOf('1:1 House/400\n2:1 Spot/200\n2:201 Wash/300');
    const wanted = [
      { mode: modeIn(rig, 'Spot', '200'), count: 3 },
      { mode: modeIn(rig, 'Wash', '300'), count: 1 },
    ];
    expect(needsOfMore(rig, wanted)).toEqual({
      ok: true,
      value: {
        units: 4,
        slots: 900,
        places: [
          { universe: 3, units: 2 },
          { universe: 4, units: 2 },
        ],
        opened: [3, 4],
        proven: 2,
      },
    });
    const [spot] = wanted as [(typeof wanted)[number]];
    expect(needsOfMore(rig, [{ ...spot, count: 0 }])).toEqual({ ok: false, error: { code: 'nothing-chosen' } });
    expect(needsOfMore(rig, [{ ...spot, count: 9999 }])).toMatchObject({ error: { code: 'bad-number' } });
    expect(needsOfMore(rig, [{ ...spot, count: -1 }])).toMatchObject({ error: { code: 'bad-number' } });
  });

  it('[PL30] of one mode opens exactly what the spare room leaves over, whatever the rig', () => {
    let opening = 0;
    for (let seed = 1; seed <= 200; seed++) {
      const rng = seededRng(seed);
      const rig = randomRig(seed, { fixtures: 30, universes: 4 });
      const fits = [...rowsOf(rig.modes)].filter(({ footprints }) => sum(footprints) <= SLOTS);
      const mode = rng.pick(fits);
      const count = 1 + rng.int(60);
      const needs = needsOfMore(rig, [{ mode, count }]);
      expect(needsOfMore(shuffled(rig), [{ mode, count }]), `seed ${seed}`).toEqual(needs);
      if (!needs.ok) throw new Error(`seed ${seed}: ${needs.error.code}`);
      const spare = roomFor(rig, mode.footprints).units;
      const each = Math.floor(SLOTS / sum(mode.footprints));
      const fresh = Math.ceil(Math.max(0, count - spare) / each);
      expect(needs.value.opened, `seed ${seed}: ${count} of ${sum(mode.footprints)}`).toHaveLength(fresh);
      expect(needs.value.proven).toBeLessThanOrEqual(fresh);
      expect(sum(needs.value.places.map(({ units }) => units))).toBe(count);
      opening += Number(fresh > 0);
    }
    expect(opening).toBeGreaterThan(30);
  });

  it('[PL31] another mode: which units would move, and what no move clears', () => {
    const rig = rigOf('1:1 Spot/16 x2\n1:33 Wash/20 !Ona\n1:100 Spot/16\n- Spot/30');
    const wide = modeIn(rig, 'Spot', '30');
    expect(needsOfMode(rig, ids('f1 f4'), wide)).toEqual({
      ok: true,
      value: { units: 2, slots: 28, raised: 1, moving: ['f2'], opened: [], left: [] },
    });
    const held = rigOf('1:1 Spot/16 !Ona\n1:17 Spot/16 !Ben\n- Spot/30');
    expect(needsOfMode(held, ids('f1'), modeIn(held, 'Spot', '30'))).toMatchObject({
      value: { raised: 1, moving: [], left: [{ fixtures: ['f1', 'f2'] }] },
    });
    expect(needsOfMode(rig, ids('f5'), wide)).toEqual({ ok: false, error: { code: 'changes-nothing' } });
  });

  it('[PL31] moves nobody who is locked, and counts every blocker that is new and stays', () => {
    let moving = 0;
    for (let seed = 1; seed <= 150; seed++) {
      const rng = seededRng(seed);
      const rig = randomRig(seed, { fixtures: 14, universes: 2 });
      const some = idsOf(rig).filter(() => rng.int(4) === 0);
      const needs = needsOfMode(rig, some, rng.pick([...rowsOf(rig.modes)]));
      if (!needs.ok) continue;
      moving += needs.value.moving.length;
      for (const id of needs.value.moving) expect(getRow(rig.fixtures, id)?.lock, `seed ${seed}: ${id}`).toBe('');
      const known = new Set(checkRig(rig).map(({ key }) => key));
      for (const { key } of needs.value.left.filter(isClash)) expect(known.has(key), `seed ${seed}`).toBe(false);
    }
    expect(moving).toBeGreaterThan(50);
  });

  const sum = (numbers: readonly number[]) => numbers.reduce((total, number) => total + number, 0);
});
