import { getRow, rowsOf } from '#base/table.ts';
import { slotRuns } from '../address/claim.ts';
import { type Occupancy, occupancyFrom, type Seat } from '../address/occupancy.ts';
import type { Universe } from '../model/address.ts';
import type { Fixture } from '../model/fixture.ts';
import type { Rig } from '../model/rig.ts';
import { cautionLines, findingLines, rowsFromEach, type Sheet, type SheetColumn, type Standing } from './sheet.ts';
import { slotCells } from './slot-cells.ts';
import { type UniverseSlot, universeSlots } from './universe-slots.ts';

const COLUMNS = [
  'universe',
  'label',
  'slot',
  'state',
  'channel',
  'position',
  'unit',
  'type',
  'mode',
  'break',
  'ownSlot',
  'cell',
  'does',
  'byte',
  'default',
  'highlight',
  'values',
] as const satisfies readonly SheetColumn[];

/**
 * Every slot of every universe that is used or labelled, in order: one row for a free slot, else one for each break that
 * claims it. [SL1]
 */
export function universeSlotSheet(rig: Rig, standing: Standing): Sheet {
  const { universes, claimants } = seatedIn(rig);
  const rows = rowsFromEach(universes, countRows(universes), (occupancy) => rowsOfUniverse(rig, occupancy, standing));
  const foot = [...cautionLines(rig, claimants, standing), ...findingLines(standing)];
  return { kind: 'universe-slots', columns: COLUMNS, ...rows, foot };
}

function seatedIn(rig: Rig): { readonly universes: readonly Occupancy[]; readonly claimants: readonly Fixture[] } {
  const seats = new Map<Universe, Seat[]>();
  const claimants: Fixture[] = [];
  for (const { universe } of rowsOf(rig.universes)) seats.set(universe, []);
  for (const fixture of rowsOf(rig.fixtures)) {
    const runs = slotRuns(rig, fixture);
    if (runs.length > 0) claimants.push(fixture);
    for (const { universe, part, first, last, over } of runs) {
      const seat = { fixture: fixture.id, part, first, last, over };
      const others = seats.get(universe);
      if (others === undefined) seats.set(universe, [seat]);
      else others.push(seat);
    }
  }
  const sorted = [...seats].sort(([a], [b]) => a - b);
  return { universes: sorted.map(([universe, each]) => occupancyFrom(universe, each)), claimants };
}

function countRows(universes: readonly Occupancy[]): number {
  let count = 0;
  for (const { seats, freeSlots } of universes) {
    count += freeSlots;
    for (const { first, last } of seats) count += last - first + 1;
  }
  return count;
}

function* rowsOfUniverse(rig: Rig, occupancy: Occupancy, { slots: words }: Standing) {
  const label = getRow(rig.universes, String(occupancy.universe))?.label ?? null;
  for (const slot of universeSlots(rig, occupancy)) {
    const head = [occupancy.universe, label, slot.slot, words.state(slot.state)];
    if (slot.users.length === 0) yield [...head, ...NOTHING];
    for (const user of slot.users) yield [...head, ...userCells(user, words)];
  }
}

const NOTHING: readonly null[] = COLUMNS.slice(4).map(() => null);

function userCells(user: UniverseSlot['users'][number], words: Standing['slots']) {
  const { fixture, part, own } = user;
  const { cell, does, byte, first, highlight, values } = slotCells(user.uses, words);
  return [
    fixture.channel,
    fixture.position,
    fixture.unit,
    fixture.type,
    fixture.mode,
    part,
    own,
    cell,
    does,
    byte,
    first,
    highlight,
    values,
  ];
}
