import { rowsOf, tableOf } from '#base/table.ts';
import { absolute, universeOf } from '#engine/model/address.ts';
import { applyEdits } from '#engine/model/apply-edits.ts';
import { type CardEdit, nameKey, portKey } from '#engine/model/card.ts';
import { setCard } from '#engine/model/card-edits.ts';
import type { Fixture } from '#engine/model/fixture.ts';
import { NOTHING_STATED } from '#engine/model/fixture-type.ts';
import { cellsOf, readFixture } from '#engine/model/read-fixture.ts';
import type { Mode, Rig } from '#engine/model/rig.ts';
import { GENERIC_TYPES } from '#engine/type/generic-types.ts';
import { pinMode } from '#engine/type/pin.ts';

const PER_CIRCUIT = 4;
const PER_SUPPLY = 48;
const PORTS = 4;
const PHASES = ['1', '2', '3'] as const;

/**
 * A rig with everything said that the rules of network, runs, feeds and limits look at: each universe travels to a port of its own, a run
 * leads from there through its units, four units are on each circuit, and every position has a limit.
 */
export function withPlant(rig: Rig): Rig {
  const modes = tableOf([...rowsOf(rig.modes)].map(pinned));
  const units = [...rowsOf(rig.fixtures)].sort((a, b) => (a.addresses[0] ?? 0) - (b.addresses[0] ?? 0));
  const placed = units.map((unit, at) => {
    const universe = universeOf(startOf(unit));
    const circuit = circuitName(Math.floor(at / PER_CIRCUIT));
    return readFixture(unit.id, { ...cellsOf(unit), run: runName(universe), along: at, cable: 2, circuit });
  });
  const universes = new Set(units.map((unit) => universeOf(startOf(unit))));
  const positions = new Set(units.map(({ position }) => position));
  const edits = [
    ...setCard('setup', 'rig', { volts: 230, share: 0.8, rules: 'bench', convention: 'same-number' }),
    ...[...universes].flatMap(universeCards),
    ...Array.from({ length: Math.ceil(units.length / PER_CIRCUIT) }, (_, at) => circuitCards(at)).flat(),
    ...[...positions].flatMap((position) =>
      setCard('limit', nameKey(position), { position, kilograms: 1000, person: 'Ona Reeve', on: '2026-11-25' }),
    ),
  ];
  return applyEdits({ ...rig, modes, fixtures: tableOf(placed) }, edits);
}

const startOf = ({ addresses: [first] }: Fixture) => first ?? absolute(1, 1);
const circuitName = (at: number) => `C${at + 1}`;
const runName = (universe: number) => `Line ${universe}`;

function pinned(mode: Mode, at: number): Mode {
  const [generic] = GENERIC_TYPES;
  if (generic === undefined) throw new Error('there are no generic types');
  const physical = { ...NOTHING_STATED, power: 300 + at, powerFactor: 0.95, weight: 12 };
  const type = { ...generic, physical };
  const pin = pinMode({ typeId: `t${at}`, number: 1, hash: `h${at}`, type }, type.modes[0]?.name ?? '');
  return { ...mode, pin };
}

function universeCards(universe: number): readonly CardEdit[] {
  const node = `n${Math.ceil(universe / PORTS)}`;
  const port = portKey(node, ((universe - 1) % PORTS) + 1);
  const host = Math.ceil(universe / PORTS);
  return [
    ...setCard('node', node, {
      name: `Node ${node}`,
      address: `2.0.${host >> 8}.${host & 255}`,
      mask: '255.0.0.0',
      ports: PORTS,
    }),
    ...setCard('port', port, { by: 'sacn', number: universe }),
    ...setCard('delivery', String(universe), { by: 'sacn', sacn: universe, cast: 'multicast' }),
    ...setCard('run', nameKey(runName(universe)), { name: runName(universe), from: `port ${port}`, end: 'terminated' }),
  ];
}

function circuitCards(at: number): readonly CardEdit[] {
  const supply = `Supply ${Math.floor(at / PER_SUPPLY) + 1}`;
  const name = circuitName(at);
  return [
    ...setCard('circuit', nameKey(name), { name, rating: 20, breaker: 'C20', supply, phase: PHASES[at % 3] ?? '1' }),
    ...setCard('supply', nameKey(supply), { name: supply, phases: 3, volts: 230, rating: 200 }),
  ];
}
