import { rowsOf } from '#base/table.ts';
import { type HousePosition, housePositions } from '../house/house-positions.ts';
import { plantOf } from '../model/plant.ts';
import { type House, recordOf } from '../model/record.ts';
import type { Rig } from '../model/rig.ts';
import { networkSheet } from './network-sheet.ts';
import { rounded } from './rounded.ts';
import {
  cautionLines,
  findingLines,
  plainCautions,
  rowsFrom,
  type Sheet,
  type SheetCell,
  type SheetColumn,
  type SheetPart,
  type SheetTable,
  type Standing,
} from './sheet.ts';
import { byPlace } from './sheet-order.ts';

const FACTS = [
  'name',
  'address',
  'entry',
  'width',
  'depth',
  'grid',
  'notes',
] as const satisfies readonly (keyof House)[];

/** A house for whoever comes in, as one sheet of several tables. [HO7] */
export function techPack(rig: Rig, standing: Standing): Sheet {
  const { circuitCautions, positionCautions } = standing.loads;
  const cautions = [
    ...plainCautions([...circuitCautions, ...positionCautions]),
    ...cautionLines(rig, rowsOf(rig.fixtures), standing),
  ];
  return {
    kind: 'tech-pack',
    columns: [],
    rows: [],
    length: 0,
    tables: [
      ...ofPlace(rig, standing),
      ...ofFeeds(rig, standing),
      ...ofData(rig, standing),
      unitTable(rig),
      ...ofStock(rig),
    ],
    foot: [...cautions, ...findingLines(standing)],
  };
}

function ofPlace(rig: Rig, standing: Standing): readonly SheetTable[] {
  const { house } = recordOf(rig.cards);
  const { fact } = standing.record;
  return [
    table('house', ['fact', 'said'], FACTS, (of) => [fact(of), house[of]]),
    table(
      'positions',
      ['position', 'numbering', 'trim', 'count', 'sum', 'unknown', 'extra', 'limit', 'person', 'on', 'notes'],
      housePositions(rig),
      (position) => positionCells(position, standing),
    ),
  ];
}

function positionCells({ name, load, place }: HousePosition, { record }: Standing): readonly SheetCell[] {
  const { units, kilograms, unknown, limit } = load;
  // Nothing, rather than 0, where there are units and not one is known.
  const isKnown = units.length === 0 || unknown.length < units.length;
  const first = place?.first ?? null;
  return [
    name,
    first === null ? null : record.choice(first),
    place?.trim ?? null,
    units.length,
    isKnown ? rounded(kilograms, 2) : null,
    unknown.length,
    limit?.extra ?? null,
    limit?.kilograms ?? null,
    limit === undefined ? record.noLimit : limit.person,
    limit?.on ?? null,
    place?.notes ?? null,
  ];
}

function ofFeeds(rig: Rig, { record }: Standing): readonly SheetTable[] {
  const { circuits, supplies } = plantOf(rig.cards);
  const phase = (word: string | null) => (word === null ? null : record.choice(word));
  return [
    table('supplies', ['supply', 'phases', 'volts', 'supplyAmps', 'notes'], [...supplies.values()], (supply) => [
      supply.name,
      supply.phases,
      supply.volts,
      supply.rating,
      supply.notes,
    ]),
    table(
      'circuits',
      ['circuit', 'supply', 'phase', 'breaker', 'breakerAmps', 'outletAt', 'connector', 'notes'],
      [...circuits.values()],
      (circuit) => [
        circuit.name,
        circuit.supply,
        phase(circuit.phase),
        circuit.breaker,
        circuit.rating,
        circuit.position,
        circuit.connector,
        circuit.notes,
      ],
    ),
  ];
}

function ofData(rig: Rig, standing: Standing): readonly SheetTable[] {
  const { outlets } = recordOf(rig.cards);
  const { choice } = standing.record;
  const { columns, rows, length } = networkSheet(rig, standing);
  return [
    table('outlets', ['outlet', 'position', 'carries', 'endsAt', 'notes'], [...outlets.values()], (outlet) => [
      outlet.name,
      outlet.position,
      outlet.carries === null ? null : choice(outlet.carries),
      outlet.to,
      outlet.notes,
    ]),
    table(
      'nodes',
      ['node', 'role', 'nodeAddress', 'ports', 'position', 'notes'],
      plantOf(rig.cards).nodes,
      ({ name, role, address, ports, position, notes }) => [name, choice(role), address, ports, position, notes],
    ),
    { part: 'universes', columns, rows, length },
  ];
}

/** How many units of each type and mode stand at each position, by where they hang. */
function unitTable(rig: Rig): SheetTable {
  const groups = new Map<string, { readonly cells: readonly string[]; count: number }>();
  for (const { position, type, mode } of byPlace(rig)) {
    const cells = [position.trim(), type.trim(), mode.trim()];
    const key = JSON.stringify(cells.map((cell) => cell.toLowerCase()));
    const group = groups.get(key);
    if (group === undefined) groups.set(key, { cells, count: 1 });
    else group.count += 1;
  }
  return table('units', ['position', 'type', 'mode', 'count'], [...groups.values()], ({ cells, count }) => [
    ...cells,
    count,
  ]);
}

function ofStock(rig: Rig): readonly SheetTable[] {
  const { spares, contacts } = recordOf(rig.cards);
  const notes = [...rowsOf(rig.notes)].sort((a, b) => a.order - b.order || (a.id < b.id ? -1 : 1));
  return [
    table('spares', ['spare', 'mode', 'number', 'where', 'notes'], spares, (spare) => [
      spare.type,
      spare.mode,
      spare.count,
      spare.where,
      spare.notes,
    ]),
    table('contacts', ['name', 'role', 'phone', 'email', 'notes'], contacts, (contact) => [
      contact.name,
      contact.role,
      contact.phone,
      contact.email,
      contact.notes,
    ]),
    table('notes', ['note'], notes, ({ text }) => [text]),
  ];
}

/** One table of a sheet of several. */
export function table<Item>(
  part: SheetPart,
  columns: readonly SheetColumn[],
  items: readonly Item[],
  cells: (item: Item) => readonly SheetCell[],
): SheetTable {
  return { part, columns, ...rowsFrom(items, cells) };
}
