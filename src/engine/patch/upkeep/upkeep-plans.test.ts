import { describe, expect, it } from 'vitest';
import { type Rng, seededRng } from '#base/rng.ts';
import { getRow } from '#base/table.ts';
import { listRig, randomPlan } from '#tests/support/random-plan.ts';
import { idsOf, randomRig } from '#tests/support/random-rig.ts';
import { rigOf } from '#tests/support/rig-shorthand.ts';
import { checkRig } from '../../check/check-rig.ts';
import { diffEdits } from '../../diff/diff-edits.ts';
import { diffRigs } from '../../diff/rig-diff.ts';
import { applyEdits } from '../../model/apply-edits.ts';
import { setCard } from '../../model/card-edits.ts';
import { type FixtureId, fixtureId } from '../../model/ids.ts';
import { recordOf } from '../../model/record.ts';
import type { Rig } from '../../model/rig.ts';
import { mendFault, reopenFault, reportFault } from './fault-plans.ts';
import { noteReading } from './note-reading.ts';
import { type SwapRequest, swapDevice } from './swap-device.ts';

type Planned = ReturnType<typeof swapDevice>;

const F1 = fixtureId('f1');
const RIG = applyEdits(rigOf('2:101+3:1 Spot/16+4 #11 @Bar1.4\n2:201 Wash/10 #12 @Bar1.5'), [
  ...setCard('spare', 'many', { type: 'Spot', mode: '16+4', count: 2, where: 'Crate 4' }),
  ...setCard('spare', 'other', { type: 'Wash', mode: '10', count: 1 }),
  ...setCard('spare', 'none', { type: 'Spot', count: 0 }),
  ...setCard('spare', 'uncounted', { type: 'Spot' }),
  { kind: 'set-cell', fixture: F1, field: 'firmware', value: '1.4' },
]);
const UPKEEP = { id: 'k1', unit: F1, called: 'Bar1 · 4', by: ' Bram Kettle ', on: '2026-11-25' };

function done(rig: Rig, plan: Planned): Rig {
  if (!plan.ok) throw new Error(JSON.stringify(plan.error));
  return applyEdits(rig, plan.value.edits);
}

const codeOf = (plan: Planned) => (plan.ok ? plan.value.name : plan.error.code);

const swapOf = (parts: Partial<SwapRequest>): SwapRequest => ({
  ...UPKEEP,
  id: 's1',
  device: { from: 'spare', spare: 'many' },
  serialOut: 'A 17',
  serialIn: 'A 22',
  why: 'no tilt',
  mends: undefined,
  ...parts,
});

describe('faults', () => {
  const report = { ...UPKEEP, what: ' no tilt ' };
  const faulty = done(RIG, reportFault(RIG, report));

  it('[UK2] a report says what, by whom and when, and is open', () => {
    expect(recordOf(faulty.cards).faults).toEqual([
      {
        id: 'k1',
        unit: 'f1',
        called: 'Bar1 · 4',
        what: 'no tilt',
        seenBy: 'Bram Kettle',
        seenOn: '2026-11-25',
        state: 'open',
        done: '',
        doneBy: '',
        doneOn: '',
      },
    ]);
    expect(codeOf(reportFault(RIG, { ...report, what: '  ' }))).toBe('nothing-said');
    expect(codeOf(reportFault(RIG, { ...report, unit: fixtureId('gone') }))).toBe('no-such-fixture');
  });

  it('[UK3] is mended with what was done, and opens again without it', () => {
    const mending = { fault: 'k1', done: ' new belt ', by: 'Odile Fenn', on: '2026-11-26' };
    const mended = done(faulty, mendFault(faulty, mending));
    expect(recordOf(mended.cards).faults[0]).toMatchObject({
      state: 'mended',
      done: 'new belt',
      doneBy: 'Odile Fenn',
      doneOn: '2026-11-26',
    });
    expect(listRig(done(mended, reopenFault(mended, 'k1')))).toEqual(listRig(faulty));
    expect(codeOf(mendFault(mended, mending))).toBe('changes-nothing');
    expect(codeOf(mendFault(faulty, { ...mending, done: '' }))).toBe('nothing-said');
    expect(codeOf(mendFault(faulty, { ...mending, fault: 'gone' }))).toBe('no-such-card');
    expect(codeOf(reopenFault(faulty, 'k1'))).toBe('changes-nothing');
    expect(codeOf(reopenFault(faulty, 'gone'))).toBe('no-such-card');
  });
});

describe('a swap', () => {
  it('[UK4] is written down, takes one spare, forgets the firmware, and can mend a fault', () => {
    const faulty = done(RIG, reportFault(RIG, { ...UPKEEP, what: 'no tilt' }));
    const swapped = done(faulty, swapDevice(faulty, swapOf({ mends: { fault: 'k1', done: 'swapped' } })));
    const { swaps, spares, faults } = recordOf(swapped.cards);
    expect(swaps).toEqual([
      {
        id: 's1',
        unit: 'f1',
        called: 'Bar1 · 4',
        out: 'A 17',
        in: 'A 22',
        from: 'Spot, Crate 4',
        why: 'no tilt',
        by: 'Bram Kettle',
        on: '2026-11-25',
      },
    ]);
    expect(spares.find(({ id }) => id === 'many')?.count).toBe(1);
    expect(faults[0]).toMatchObject({ state: 'mended', done: 'swapped', doneBy: 'Bram Kettle' });
    const [before, after] = [getRow(faulty.fixtures, F1), getRow(swapped.fixtures, F1)];
    expect(after).toEqual({ ...before, firmware: '' });
  });

  it('[UK4] with a device of another type or mode sets these, and the findings say what that means', () => {
    const other = done(RIG, swapDevice(RIG, swapOf({ device: { from: 'spare', spare: 'other' } })));
    expect(getRow(other.fixtures, F1)).toMatchObject({ type: 'Wash', mode: '10', channel: 11, unit: '4' });
    const strange = { from: 'elsewhere', where: 'Tide Hire', type: 'Lantern', mode: '' } as const;
    const hired = done(RIG, swapDevice(RIG, swapOf({ device: strange })));
    expect(getRow(hired.fixtures, F1)).toMatchObject({ type: 'Lantern', mode: '16+4' });
    expect(checkRig(RIG).map(({ rule }) => rule)).not.toContain('unknown-type');
    expect(checkRig(hired).map(({ rule }) => rule)).toContain('unknown-type');
    expect(recordOf(hired.cards).swaps[0]?.from).toBe('Tide Hire');
    const same = { from: 'elsewhere', where: 'store', type: ' spot', mode: '' } as const;
    expect(getRow(done(RIG, swapDevice(RIG, swapOf({ device: same }))).fixtures, F1)?.type).toBe('Spot');
  });

  it('[UK4] is refused without a device, a spare, a fault or a unit that is there', () => {
    expect(codeOf(swapDevice(RIG, swapOf({ device: { from: 'spare', spare: 'none' } })))).toBe('no-spare-left');
    expect(codeOf(swapDevice(RIG, swapOf({ device: { from: 'spare', spare: 'gone' } })))).toBe('no-such-card');
    const nothing = { from: 'elsewhere', where: ' ', type: '', mode: '' } as const;
    expect(codeOf(swapDevice(RIG, swapOf({ device: nothing })))).toBe('nothing-said');
    expect(codeOf(swapDevice(RIG, swapOf({ mends: { fault: 'gone', done: '' } })))).toBe('no-such-card');
    expect(codeOf(swapDevice(RIG, swapOf({ unit: fixtureId('gone') })))).toBe('no-such-fixture');
    const uncounted = done(RIG, swapDevice(RIG, swapOf({ device: { from: 'spare', spare: 'uncounted' } })));
    expect(recordOf(uncounted.cards).spares.find(({ id }) => id === 'uncounted')?.count).toBeNull();
  });

  it('[UK5] keeps all that says where a unit is and how it is called, never counts below 0, and undone is as it was', () => {
    let swaps = 0;
    for (let seed = 1; seed <= 400; seed++) {
      const rng = seededRng(seed);
      const rig = applyEdits(randomRig(seed, { fixtures: 12, universes: 2 }), [
        ...randomPlan(rng, 12, 60).edits,
        ...setCard('spare', 'some', { type: rng.pick(['Spot', 'Wash', 'Ghost']), mode: '16', count: rng.int(3) }),
      ]);
      const unit = rng.pick(idsOf(rig));
      const plan = swapDevice(rig, randomSwap(rng, rig, unit));
      if (!plan.ok) {
        expect(['no-spare-left', 'nothing-said']).toContain(plan.error.code);
        continue;
      }
      swaps++;
      const after = applyEdits(rig, plan.value.edits);
      const kept = ({ type, mode, firmware, unreadable, ...rest }: NonNullable<ReturnType<typeof unitOf>>) => rest;
      const [was, is] = [unitOf(rig, unit), unitOf(after, unit)];
      if (was === undefined || is === undefined) throw new Error(`seed ${seed}: the unit is gone`);
      expect(kept(is), `seed ${seed}`).toEqual(kept(was));
      for (const { count } of recordOf(after.cards).spares) if (count !== null) expect(count).toBeGreaterThanOrEqual(0);
      expect(spareCount(after)).toBeGreaterThanOrEqual(spareCount(rig) - 1);
      const back = applyEdits(after, diffEdits(diffRigs(after, rig)));
      expect(listRig(back), `seed ${seed}`).toEqual(listRig(rig));
    }
    expect(swaps).toBeGreaterThan(100);
  });
});

const unitOf = (rig: Rig, unit: FixtureId) => getRow(rig.fixtures, unit);
const spareCount = (rig: Rig) => recordOf(rig.cards).spares.reduce((sum, { count }) => sum + (count ?? 0), 0);

function randomSwap(rng: Rng, rig: Rig, unit: FixtureId): SwapRequest {
  const { spares, faults } = recordOf(rig.cards);
  const spare = spares.length === 0 || rng.int(4) === 0 ? undefined : rng.pick(spares);
  const device =
    spare === undefined
      ? ({ from: 'elsewhere', where: rng.pick(['', 'store']), type: rng.pick(['', 'Bar']), mode: '' } as const)
      : ({ from: 'spare', spare: spare.id } as const);
  const fault = faults.length === 0 ? undefined : rng.pick(faults);
  return swapOf({ unit, device, mends: fault === undefined ? undefined : { fault: fault.id, done: 'swapped' } });
}

describe('a reading', () => {
  const note = { ...UPKEEP, id: 'r1', cell: 'written' } as const;

  it('[UK6] of hours is a number above 0, with a comma or a point', () => {
    const read = done(RIG, noteReading(RIG, { ...note, of: 'lamp', text: ' 412,5 ' }));
    expect(recordOf(read.cards).readings).toMatchObject([{ of: 'lamp', hours: 412.5, by: 'Bram Kettle', unit: 'f1' }]);
    for (const text of ['', '0', 'many', '-3']) {
      expect(codeOf(noteReading(RIG, { ...note, of: 'service', text }))).toBe('nothing-said');
    }
    expect(codeOf(noteReading(RIG, { ...note, of: 'lamp', text: '1', unit: fixtureId('gone') }))).toBe(
      'no-such-fixture',
    );
  });

  it('[UK6] of a firmware becomes the unit’s, unless that is to be left', () => {
    const read = done(RIG, noteReading(RIG, { ...note, of: 'firmware', text: ' 1.6 ' }));
    expect(getRow(read.fixtures, F1)?.firmware).toBe('1.6');
    expect(recordOf(read.cards).readings).toMatchObject([{ of: 'firmware', firmware: '1.6', hours: null }]);
    const left = done(RIG, noteReading(RIG, { ...note, of: 'firmware', text: '1.6', cell: 'left' }));
    expect(getRow(left.fixtures, F1)?.firmware).toBe('1.4');
    expect(codeOf(noteReading(RIG, { ...note, of: 'firmware', text: ' ' }))).toBe('nothing-said');
  });
});
