import { describe, expect, it } from 'vitest';
import { randomRig } from '#tests/support/random-rig.ts';
import { checkRig } from '../check/check-rig.ts';
import { hazardsOfRig } from './hazards-of-rig.ts';

describe('the hazards of a rig', () => {
  it('[HZ1] somebody answers for exactly those of which the check says nothing', () => {
    let seen = 0;
    for (let seed = 1; seed <= 150; seed++) {
      const rig = randomRig(seed, { fixtures: 20, universes: 2 });
      const unsigned = checkRig(rig).flatMap((finding) =>
        finding.rule === 'hazard-unsigned' ? [{ hazard: finding.hazard, open: finding.types }] : [],
      );
      const open = hazardsOfRig(rig).flatMap((each) => (each.open.length === 0 ? [] : [each]));
      seen += open.length;
      const said = (list: readonly { hazard: string; open: readonly string[] }[]) =>
        list.map((each) => `${each.hazard}: ${[...each.open].sort().join(', ')}`).sort();
      expect(said(open), `seed ${seed}`).toEqual(said(unsigned));
      for (const { types, toSign, units } of hazardsOfRig(rig)) {
        expect(units).toBeGreaterThan(0);
        expect(types).toEqual(expect.arrayContaining([...toSign]));
      }
    }
    expect(seen).toBeGreaterThan(20);
  });
});
