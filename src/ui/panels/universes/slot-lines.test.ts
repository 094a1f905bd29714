import { expect, test } from 'vitest';
import { occupancyOf } from '#engine/address/occupancy.ts';
import type { Universe } from '#engine/model/address.ts';
import { universeSlots } from '#engine/sheet/universe-slots.ts';
import { rigOf } from '#tests/support/rig-shorthand.ts';
import { slotLines } from './slot-lines.ts';

test('has a line for each free slot and for each claimant, and says where another begins', () => {
  const rig = rigOf('1:1 Spot/2 @LX.1\n1:3 Spot/2 @LX.2\n1:4 Spot/2 @LX.3');
  const lines = slotLines(universeSlots(rig, occupancyOf(rig, 1 as Universe)));
  const said = lines.map(({ slot, state, user, place }) => `${slot} ${user?.fixture.unit ?? '-'} ${state} ${place}`);
  expect(said.slice(0, 8)).toEqual([
    '1 1 used first',
    '2 1 used next',
    '3 2 used first',
    '4 2 claimed-twice next',
    '4 3 claimed-twice first',
    '5 3 used next',
    '6 - free first',
    '7 - free next',
  ]);
  expect(lines.length).toBe(513);
});
