import { getRow, rowsOf } from '#base/table.ts';
import { slotRuns } from '../address/claim.ts';
import { type Occupancy, occupancyFrom, type Seat } from '../address/occupancy.ts';
import type { Universe } from '../model/address.ts';
import type { Fixture } from '../model/fixture.ts';
import type { Rig } from '../model/rig.ts';
import {
  cautionLines,
  findingLines,
  rowsFromEach,
  type Sheet,
  type SheetCell,
  type SheetColumn,
  type Standing,
} from './sheet.ts';
import { slotReader } from './slot-cells.ts';
import { universeSlots } from './universe-slots.ts';

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
  const say = { state: standing.slots.state, uses: slotReader(standing.slots) };
  const rows = rowsFromEach(universes, countRows(universes), (occupancy) => rowsOfUniverse(rig, occupancy, say));
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

function* rowsOfUniverse(rig: Rig, occupancy: Occupancy, say: Say): Generator<readonly SheetCell[]> {
  const { universe } = occupancy;
  const label = getRow(rig.universes, String(universe))?.label ?? null;
  for (const { slot, state, users } of universeSlots(rig, occupancy)) {
    const word = say.state(state);
    if (users.length === 0) yield [universe, label, slot, word, ...NOTHING];
    for (const { fixture, part, own, uses } of users) {
      const { channel, position, unit, type, mode } = fixture;
      const { cell, does, byte, first, highlight, values } = say.uses(uses);
      const whose = [channel, position, unit, type, mode, part, own];
      yield [universe, label, slot, word, ...whose, cell, does, byte, first, highlight, values];
    }
  }
}

const NOTHING: readonly null[] = COLUMNS.slice(4).map(() => null);

interface Say {
  readonly state: Standing['slots']['state'];
  readonly uses: ReturnType<typeof slotReader>;
}
