import { describe, expect, it } from 'vitest';
import { rowsOf } from '#base/table.ts';
import { randomRig } from '#tests/support/random-rig.ts';
import { checkRig } from '../check/check-rig.ts';
import { firmwareOfTypes } from './firmware-of-types.ts';

describe('the firmware of a rig', () => {
  it('[FW2] names every unit of a type once, and agrees with what the check finds', () => {
    for (let seed = 1; seed <= 100; seed++) {
      const rig = randomRig(seed, { fixtures: 30, universes: 2 });
      const types = firmwareOfTypes(rig);
      const named = [...rowsOf(rig.fixtures)].filter(({ type }) => type.trim() !== '');
      expect(types.reduce((sum, { units }) => sum + units, 0)).toBe(named.length);
      const unknown = types.flatMap((type) => type.unknown.map(({ id }) => id)).sort();
      expect(unknown).toEqual(
        named
          .filter(({ firmware }) => firmware === '')
          .map(({ id }) => id)
          .sort(),
      );
      const found = (rule: string) =>
        checkRig(rig).flatMap((finding) => (finding.rule === rule ? finding.fixtures : []));
      const others = types.flatMap((type) => type.others.map(({ id }) => id));
      const lacking = types.flatMap((type) => type.lacking.map(({ id }) => id));
      const ofTypes = new Set(named.map(({ id }) => id));
      expect(others.sort()).toEqual(
        found('firmware-wanted')
          .filter((id) => ofTypes.has(id))
          .sort(),
      );
      expect(lacking.sort()).toEqual(
        found('firmware-mode')
          .filter((id) => ofTypes.has(id))
          .sort(),
      );
    }
  });
});
