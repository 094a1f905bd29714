import { describe, expect, it } from 'vitest';
import { ids, shown } from '#tests/support/planned.ts';
import { rigOf } from '#tests/support/rig-shorthand.ts';
import { renumberChannels, renumberUnits } from './renumber-plans.ts';

describe('numbers', () => {
  it('[PL5] numbers channels in the order chosen', () => {
    const rig = rigOf('1:1 Spot/16 x3 #1');
    expect(shown(renumberChannels(rig, { fixtures: ids('f3 f1 f2'), from: 101, step: 10 }))).toEqual([
      'f3 channel 101',
      'f1 channel 111',
      'f2 channel 121',
    ]);
    expect(shown(renumberChannels(rig, { fixtures: ids('f3 f1'), from: 1, step: -1 }))).toMatchObject({
      code: 'out-of-range',
      value: 0,
    });
    expect(shown(renumberChannels(rig, { fixtures: ids('f3'), from: 1.5, step: 1 }))).toEqual({
      code: 'bad-number',
      value: 1.5,
    });
  });

  it('[PL6] numbers units along each position in natural order', () => {
    const rig = rigOf('- S/1 @LX1.10\n- S/1 @LX1.4A\n- S/1 @LX2.7\n- S/1 @lx1.4\n- S/1 @LX1.2\n- S/1 @LX1.');
    expect(shown(renumberUnits(rig, { fixtures: ids('f1 f2 f3 f4 f5 f6'), from: 1, step: 1 }))).toEqual([
      'f5 unit 1',
      'f4 unit 2',
      'f2 unit 3',
      'f1 unit 4',
      'f6 unit 5',
      'f3 unit 1',
    ]);
  });
});
