import { describe, expect, it } from 'vitest';
import { getRow } from '#base/table.ts';
import { modeId } from '#engine/model/ids.ts';
import type { Rig } from '#engine/model/rig.ts';
import { needsOfMode, needsOfMore } from '#engine/patch/spare/change-needs.ts';
import { ids } from '#tests/support/planned.ts';
import { rigOf } from '#tests/support/rig-shorthand.ts';
import { modeChoices, modeSentences, moreSentences } from './needs.ts';

describe('words of a planned change', () => {
  const modeIn = (rig: Rig, type: string, mode: string) => {
    const known = getRow(rig.modes, modeId(type, mode));
    if (known === undefined) throw new Error(`no ${type} ${mode}`);
    return known;
  };
  const more = (rig: Rig, count: number) => {
    const needs = needsOfMore(rig, [{ mode: modeIn(rig, 'Spot', '100'), count }]);
    return needs.ok ? moreSentences(needs.value) : needs.error;
  };
  const another = (rig: Rig, units: string, mode: string) => {
    const needs = needsOfMode(rig, ids(units), modeIn(rig, 'Spot', mode));
    return needs.ok ? modeSentences(needs.value, rig) : needs.error;
  };

  it('say where more units fit, and which universes are new', () => {
    const rig = rigOf('1:1 Spot/100\n2:1 House/512');
    expect(more(rig, 4)).toEqual([
      '4 units would take 400 slots.',
      'All of them fit into universe 1, in use already.',
      'No unit of the rig has to move.',
    ]);
    expect(more(rig, 10)).toEqual([
      '10 units would take 1,000 slots.',
      '4 of them fit into universe 1, in use already.',
      'The others need 2 new universes: universes 3 and 4; fewer are not possible.',
      'No unit of the rig has to move.',
    ]);
  });

  it('say who would have to move for another mode, and which locks are in the way', () => {
    const rig = rigOf('1:1 Spot/100 @Bar.1\n1:101 Spot/100 @Bar.2\n1:400 Spot/20 @Bar.3');
    expect(another(rig, 'f3', '100')).toEqual([
      '1 unit would change, and take 80 slots more.',
      'No new clash would come of it, and no unit has to move.',
    ]);
    const wide = rigOf('1:1 Spot/100 @Bar.1 !Ona\n1:101 Spot/100 @Bar.2 !set\n1:300 Spot/120 @Bar.3');
    expect(another(wide, 'f1', '120')).toEqual([
      '1 unit would change, and take 20 slots more.',
      '1 blocker would come of it.',
      '1 blocker would stay, for which nothing was found to move. Locked among them: Bar · 1 (Ona), Bar · 2 (set).',
    ]);
    const free = rigOf('1:1 Spot/100 @Bar.1 !Ona\n1:101 Spot/100 @Bar.2\n1:300 Spot/120 @Bar.3');
    expect(another(free, 'f1', '120')).toContain('1 unit would have to move: Bar · 2.');
  });

  it('name the modes with their slots, 20 before 100', () => {
    const rig = rigOf('1:1 Spot/100\n1:101 Bar/10+20\n1:400 Spot/20');
    expect(modeChoices(rig).map(({ label }) => label)).toEqual(['Bar 10+20 (10+20)', 'Spot 20 (20)', 'Spot 100 (100)']);
  });
});
