import { describe, expect, it } from 'vitest';
import { rigOf } from '#tests/support/rig-shorthand.ts';
import { applyEdits } from '../model/apply-edits.ts';
import { setCard } from '../model/card-edits.ts';
import { fixtureId } from '../model/ids.ts';
import { checkRig } from './check-rig.ts';

const RIG = rigOf('1:1 Spot/16\n1:21 Spot/16');
const fault = (id: string, cells: Record<string, string>) =>
  setCard('fault', id, { unit: 'f1', what: 'no tilt', ...cells });
const found = (rig = RIG) =>
  checkRig(rig).flatMap((finding) =>
    finding.rule === 'fault-open' ? [`${finding.severity} ${finding.fixtures} ${finding.what}`] : [],
  );

describe('units with a fault', () => {
  it('[UK1] are a caution each until the fault is mended, whoever said so', () => {
    const faulty = applyEdits(RIG, [
      ...fault('a', {}),
      ...fault('b', { unit: 'f2', what: 'dim', state: 'open' }),
      ...fault('c', { unit: 'f2', what: 'old', state: 'mended' }),
    ]);
    expect(found(faulty)).toEqual(['caution f2 dim', 'caution f1 no tilt']);
    expect(found(applyEdits(faulty, setCard('fault', 'a', { state: 'mended' })))).toEqual(['caution f2 dim']);
  });

  it('[UK1] that say the same of one unit are said once, and nothing is said of a unit that is gone', () => {
    const faulty = applyEdits(RIG, [...fault('a', {}), ...fault('b', {}), ...fault('c', { unit: 'gone' })]);
    expect(found(faulty)).toEqual(['caution f1 no tilt']);
    expect(found(applyEdits(faulty, [{ kind: 'remove-fixture', fixture: fixtureId('f1') }]))).toEqual([]);
  });
});
