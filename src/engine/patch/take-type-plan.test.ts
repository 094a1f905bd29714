import { describe, expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import { getRow, rowsOf } from '#base/table.ts';
import { RANDOM_LIBRARY, randomRig } from '#tests/support/random-rig.ts';
import { randomType } from '#tests/support/random-type.ts';
import { printRig, rigOf } from '#tests/support/rig-shorthand.ts';
import { checkRig } from '../check/check-rig.ts';
import { applyEdits } from '../model/apply-edits.ts';
import { modeId } from '../model/ids.ts';
import type { Rig } from '../model/rig.ts';
import { GENERIC_TYPES } from '../type/generic-types.ts';
import type { LibraryRevision } from '../type/pin.ts';
import { footprintsOfMode, slotsOf } from '../type/slots-of.ts';
import { previewTaking } from './preview-taking.ts';
import { matchModes, namesOfType, takeTypePlan } from './take-type-plan.ts';

function generic(model: string, number = 1): LibraryRevision {
  const type = GENERIC_TYPES.find((each) => each.model === model);
  if (type === undefined) throw new Error(`no generic type ${model}`);
  return { typeId: model, number, hash: `${model} ${number}`, type };
}

/** The same type with its first mode's channels moved `by` slots up: a revision that grows. */
function grown(revision: LibraryRevision, by: number): LibraryRevision {
  const modes = revision.type.modes.map((mode) => ({
    ...mode,
    channels: mode.channels.map((channel) => ({ ...channel, offsets: channel.offsets.map((offset) => offset + by) })),
  }));
  return { ...revision, number: 2, hash: 'grown', type: { ...revision.type, modes } };
}

const take = (rig: Rig, type: string, revision: LibraryRevision) => {
  const modes = matchModes(rig, type, revision).flatMap(({ mode, is }) => (is === null ? [] : [{ mode, is }]));
  const plan = takeTypePlan(rig, { type, revision, modes });
  if (!plan.ok) throw new Error(plan.error.code);
  return plan.value;
};

describe('taking a type', () => {
  it('[PL16] copies exactly the modes asked for, whatever the type, and moves no unit', () => {
    for (let seed = 1; seed <= 200; seed++) {
      const rng = seededRng(seed);
      const type = randomType(rng);
      const rig = randomRig(seed, { fixtures: 12, universes: 2 });
      const modes = type.modes.filter(() => rng.int(3) > 0).map(({ name }, at) => ({ mode: `mode ${at}`, is: name }));
      const plan = takeTypePlan(rig, { type: 'Spot', revision: { typeId: 't', number: 1, hash: 'h', type }, modes });
      const unfit = type.modes.some((mode) => {
        const slots = footprintsOfMode(type, mode);
        return modes.some(({ is }) => is === mode.name) && (slots.length > 4 || slots.some((each) => each > 512));
      });
      expect(plan.ok, `seed ${seed}`).toBe(!unfit && modes.length > 0);
      if (!plan.ok) continue;
      const after = applyEdits(rig, plan.value.edits);
      expect(after.fixtures).toBe(rig.fixtures);
      for (const { mode, is } of modes) {
        const taken = getRow(after.modes, modeId('Spot', mode));
        const original = type.modes.find((each) => each.name === is);
        if (!taken?.pin || original === undefined) throw new Error(`seed ${seed}: ${mode} was not taken`);
        const [only, ...others] = taken.pin.type.modes;
        expect(others).toEqual([]);
        // Without the parts of other modes its slots are the same.
        expect(only && slotsOf(taken.pin.type, only)).toEqual(slotsOf(type, original));
      }
    }
  });

  it('[PL16] refuses what is not there, and what would change nothing', () => {
    const rig = rigOf('1:1 RGB/3');
    const code = (mode: string) => {
      const plan = takeTypePlan(rig, { type: 'RGB', revision: generic('RGB'), modes: [{ mode: '3', is: mode }] });
      return plan.ok ? plan.value.name : plan.error.code;
    };
    expect([code('Nowhere'), code('Colours')]).toEqual(['no-such-mode', 'take-type']);
    const taken = applyEdits(rig, take(rig, 'RGB', generic('RGB')).edits);
    const again = takeTypePlan(taken, { type: 'RGB', revision: generic('RGB'), modes: [{ mode: '3', is: 'Colours' }] });
    expect(again.ok ? '' : again.error.code).toBe('changes-nothing');
  });

  it('[PL17] tells modes by where they were copied from, by name, by a footprint that is the only one', () => {
    const rig = rigOf('1:1 RGB/3\n1:11 RGB/colours\n1:21 RGB/4\n1:31 RGB/7');
    const by = (of: Rig) => matchModes(of, 'rgb', generic('RGB')).map(({ mode, is, by }) => [mode, is, by]);
    expect(by(rigOf('1:1 Other/3'))).toEqual([]);
    const named = applyEdits(rig, [{ kind: 'set-mode', type: 'RGB', mode: 'colours', footprints: [9] }]);
    expect(by(named).sort()).toEqual([
      ['3', 'Colours', 'slots'],
      ['4', 'Intensity and colours', 'slots'],
      ['7', null, null],
      ['colours', 'Colours', 'name'],
    ]);
    const taken = applyEdits(named, take(named, 'RGB', generic('RGB')).edits);
    expect(
      by(taken)
        .map(([mode, , how]) => `${mode} ${how}`)
        .sort(),
    ).toEqual(['3 copy', '4 copy', '7 null', 'colours copy']);
    expect(namesOfType(taken, 'RGB')).toEqual(['RGB']);
  });

  it('[PL18] names who grows and what would clash, and its moves leave no blocker that was not there', () => {
    const before = rigOf('1:1 RGB/3 x4');
    const rig = applyEdits(before, take(before, 'RGB', generic('RGB')).edits);
    const plan = take(rig, 'RGB', grown(generic('RGB'), 2));
    const preview = previewTaking(rig, plan);
    expect(preview.resized.map(({ before: old, after, units }) => [old, after, units.length])).toEqual([[[3], [5], 4]]);
    expect(preview.raised.length).toBe(3);
    const after = applyEdits(rig, [...plan.edits, ...preview.moves]);
    expect(checkRig(after).filter(({ severity }) => severity === 'blocker')).toEqual([]);
    expect(printRig(after).filter((line) => printRig(rig).includes(line)).length).toBeGreaterThan(1);
  });

  it('[PL18] holds for random rigs: what is left is said, nothing else is new', () => {
    for (let seed = 1; seed <= 60; seed++) {
      const rig = randomRig(seed, { fixtures: 25, universes: 3 });
      const revision = grown(generic('RGB'), 1 + (seed % 20));
      const [mode] = rowsOf(rig.modes);
      if (mode === undefined) throw new Error('a random rig has modes');
      const plan = takeTypePlan(rig, { type: mode.type, revision, modes: [{ mode: mode.mode, is: 'Colours' }] });
      if (!plan.ok) throw new Error(plan.error.code);
      const { moves, left } = previewTaking(rig, plan.value);
      const keys = (of: Rig) =>
        checkRig(of, RANDOM_LIBRARY)
          .filter(({ severity }) => severity === 'blocker')
          .map(({ key }) => key);
      const stood = new Set(keys(rig));
      const fresh = keys(applyEdits(rig, [...plan.value.edits, ...moves])).filter((key) => !stood.has(key));
      expect(fresh.sort(), `seed ${seed}`).toEqual(left.map(({ key }) => key).sort());
    }
  });
});
