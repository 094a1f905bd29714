import { modeOf } from '../model/find-mode.ts';
import type { Fixture } from '../model/fixture.ts';
import type { Rig } from '../model/rig.ts';
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
import { slotCells } from './slot-cells.ts';

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
  const rows = rowsFromEach(fixtures, count, (fixture) => rowsOfFixture(rig, fixture, standing));
  const foot = [...cautionLines(rig, fixtures, standing), ...findingLines(standing)];
  return { kind: 'channel-slots', columns: COLUMNS, ...rows, foot };
}

function* rowsOfFixture(rig: Rig, fixture: Fixture, { slots: words }: Standing): Generator<readonly SheetCell[]> {
  const { channel, position, unit, type, mode } = fixture;
  const head = [channel, position, unit, type, mode];
  let some = false;
  for (const { part, own, at, uses } of fixtureSlots(fixture, modeOf(rig, fixture))) {
    some = true;
    const { cell, does, byte, first, highlight } = slotCells(uses, words);
    yield [...head, part, own, at?.universe ?? null, at?.slot ?? null, cell, does, byte, first, highlight];
  }
  if (!some) yield [...head, null, null, null, null, null, words.does(null), null, null, null];
}
