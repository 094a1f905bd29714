import { rowsOf } from '#base/table.ts';
import type { Occupancy } from '../address/occupancy.ts';
import { createOccupancy } from '../address/occupancy-index.ts';
import { formatPortAddress, isPortAddress } from '../address/port-address.ts';
import { isSacnUniverse, multicastGroup } from '../address/sacn-universe.ts';
import { SLOTS, type Universe } from '../model/address.ts';
import type { Finding } from '../model/finding.ts';
import type { Rig } from '../model/rig.ts';
import { type UniverseRoute, universeRoutes } from '../network/universe-routes.ts';
import {
  cautionLines,
  findingLines,
  rowsFrom,
  type Sheet,
  type SheetCell,
  type SheetColumn,
  type Standing,
} from './sheet.ts';

const COLUMNS = [
  'universe',
  'label',
  'by',
  'sacn',
  'group',
  'portAddress',
  'node',
  'nodeAddress',
  'port',
  'run',
  'count',
  'slotsUsed',
  'standing',
] as const satisfies readonly SheetColumn[];

/** One row per universe in use: its three numbers side by side, where it comes out, and what the check says of its way. [NW34] */
export function networkSheet(rig: Rig, standing: Standing): Sheet {
  const occupancy = createOccupancy(rig);
  const used = universeRoutes(rig, occupancy.universes()).filter(({ use }) => use === 'used');
  const said = findingsByUniverse(standing.findings);
  const rows = rowsFrom(used, (route): readonly SheetCell[] => {
    const { universe, label, delivery, outlets, runs } = route;
    const { seats, freeSlots } = occupancy.of(universe);
    return [
      universe,
      label,
      delivery === undefined ? '' : standing.way(delivery.by),
      ...numbersOf(route),
      outlets.map(({ node }) => node.name).join('; '),
      outlets.map(({ node }) => node.address).join('; '),
      outlets.map(({ port }) => port.index).join('; '),
      runs.map(({ name }) => name).join('; '),
      unitsIn(seats),
      SLOTS - freeSlots,
      (said.get(universe) ?? []).map(standing.say).join('; '),
    ];
  });
  // A universe brings every unit on it to life.
  const cautions = cautionLines(rig, rowsOf(rig.fixtures), standing);
  return { kind: 'network', columns: COLUMNS, ...rows, foot: [...cautions, ...findingLines(standing)] };
}

/** sACN number, its group, and Port-Address: what stands of them, whichever the universe travels by. */
function numbersOf({ delivery }: UniverseRoute): readonly SheetCell[] {
  const sacn = delivery?.sacn ?? null;
  const address = delivery?.portAddress ?? null;
  return [
    sacn,
    sacn !== null && isSacnUniverse(sacn) ? multicastGroup(sacn).ipv4 : '',
    address !== null && isPortAddress(address) ? formatPortAddress(address) : '',
  ];
}

const unitsIn = (seats: Occupancy['seats']) => new Set(seats.map(({ fixture }) => fixture)).size;

/** What the rules of the network found of each universe. */
function findingsByUniverse(findings: readonly Finding[]): ReadonlyMap<Universe, readonly Finding[]> {
  const said = new Map<Universe, Finding[]>();
  for (const finding of findings) {
    for (const universe of 'universes' in finding ? finding.universes : []) {
      said.set(universe, [...(said.get(universe) ?? []), finding]);
    }
  }
  return said;
}
