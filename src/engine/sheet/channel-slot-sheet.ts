import { modeOf } from '../model/find-mode.ts';
import type { Fixture } from '../model/fixture.ts';
import type { Rig } from '../model/rig.ts';
import type { PinnedUse } from '../type/pin-slots.ts';
import { countSlots, fixtureSlots } from './fixture-slots.ts';
import {
  cautionLines,
  findingLines,
  rowsFromEach,
  type Sheet,
  type SheetCell,
  type SheetColumn,
  type Standing,
} from './sheet.ts';
import { byChannel } from './sheet-order.ts';
import { type SlotCells, slotReader } from './slot-cells.ts';

const COLUMNS = [
  'channel',
  'position',
  'unit',
  'type',
  'mode',
  'break',
  'ownSlot',
  'universe',
  'slot',
  'cell',
  'does',
  'byte',
  'default',
  'highlight',
] as const satisfies readonly SheetColumn[];

/** Every slot of every fixture by channel; a fixture of which no slot is known has one row that says so. [SL4] */
export function channelSlotSheet(rig: Rig, standing: Standing): Sheet {
  const fixtures = byChannel(rig);
  const count = fixtures.reduce((sum, fixture) => sum + Math.max(1, countSlots(fixture, modeOf(rig, fixture))), 0);
  const read = slotReader(standing.slots);
  const rows = rowsFromEach(fixtures, count, (fixture) => rowsOfFixture(rig, fixture, read));
  const foot = [...cautionLines(rig, fixtures, standing), ...findingLines(standing)];
  return { kind: 'channel-slots', columns: COLUMNS, ...rows, foot };
}

type Reader = (uses: readonly PinnedUse[] | null) => SlotCells;

function* rowsOfFixture(rig: Rig, fixture: Fixture, read: Reader): Generator<readonly SheetCell[]> {
  const { channel, position, unit, type, mode } = fixture;
  let some = false;
  for (const { part, own, at, uses } of fixtureSlots(fixture, modeOf(rig, fixture))) {
    some = true;
    const { cell, does, byte, first, highlight } = read(uses);
    const place = [part, own, at?.universe ?? null, at?.slot ?? null];
    yield [channel, position, unit, type, mode, ...place, cell, does, byte, first, highlight];
  }
  if (some) return;
  const { does } = read(null);
  yield [channel, position, unit, type, mode, null, null, null, null, null, does, null, null, null];
}
