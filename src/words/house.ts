import type { HousePosition } from '#engine/house/house-positions.ts';
import type { Circuit, NetworkNode } from '#engine/model/plant.ts';
import type { UniverseRoute } from '#engine/network/universe-routes.ts';
import type { LineKind } from '#engine/patch/house/house-plans.ts';
import { ampsText, kilogramsText } from './amounts.ts';
import { CARD_CHOICE_WORDS } from './cards.ts';
import { wayWords } from './network.ts';
import { counted } from './screens.ts';

/** The page of the house: what is written down of the place, its stock and its people. */
export const HOUSE_WORDS = {
  title: 'House',
  jump: 'Parts of this page',
  reader: 'You are a reader here: the record is shown as it stands.',
  parts: {
    house: 'The house',
    positions: 'Positions',
    circuits: 'Circuits',
    outlets: 'Data outlets',
    network: 'Nodes and universes',
    spares: 'Spares',
    contacts: 'Contacts',
    notes: 'Notes',
  },
  cellOf: (cell: string, name: string) => `${cell} of ${name}`,
  theHouse: 'the house',
  venue: {
    name: 'Name',
    address: 'Address',
    entry: 'Way in for lorries and cases',
    width: 'Stage width in m',
    depth: 'Stage depth in m',
    grid: 'Grid height in m',
    notes: 'Notes',
  },
  place: {
    first: 'Numbers run',
    trim: 'Trim in m',
    kilograms: 'Limit in kg',
    person: 'Stated by',
    on: 'On',
    notes: 'Notes',
  },
  position: 'Position',
  hangs: 'Hangs there now',
  noPositions: 'No position yet. Add one, or name positions in the sheet.',
  circuit: { position: 'Outlet at', connector: 'Connector' },
  circuitName: 'Circuit',
  feeds: 'Supply, phase, breaker',
  circuitsAbout: 'Breakers, supplies and phases are set on the page of the supply.',
  toSupply: 'Supply',
  noCircuits: 'No circuit is described yet. Describe circuits on the page of the supply.',
  outlet: { name: 'Outlet', position: 'Position', carries: 'Carries', to: 'Its line ends at', notes: 'Notes' },
  spare: { type: 'Type', mode: 'Mode', count: 'Number', where: 'Where it is', notes: 'Notes' },
  contact: { name: 'Name', role: 'Role', phone: 'Phone', email: 'E-mail', notes: 'Notes' },
  call: (name: string) => `Call ${name}`,
  callWord: 'call',
  write: (name: string) => `Write to ${name}`,
  writeWord: 'write',
  networkAbout: 'How universes travel is set on the page of the network.',
  toNetwork: 'Network',
  noNetwork: 'Nothing is said of a network yet.',
  note: (n: number) => `Note ${n}`,
  noNotes: 'No note yet.',
  none: {
    outlet: 'No outlet yet.',
    spare: 'No spare is written down yet.',
    contact: 'Nobody is written down yet.',
    hire: 'Nothing is hired in.',
  } satisfies Record<LineKind, string>,
  add: {
    position: 'Add a position',
    outlet: 'Add an outlet',
    spare: 'Add a spare',
    contact: 'Add a contact',
    hire: 'Add a hired item',
    note: 'Add a note',
  } satisfies Record<LineKind | 'position' | 'note', string>,
  /** What a line may say, in the order in which it is read. */
  lineHint: {
    position: 'its name',
    outlet: 'FOH 3, Front bridge, network, rack 2',
    spare: '2 profile, mode, crate 4',
    contact: 'name, role, phone, e-mail',
    hire: '2 hazer, its owner, 2026-12-05',
    note: 'what everybody should know',
  } satisfies Record<LineKind | 'position' | 'note', string>,
  addWord: 'Add',
  remove: (name: string) => `Remove ${name}`,
  removeWord: 'remove',
  notStated: 'not stated',
  noPlace: 'no position',
  more: (n: number) => `Show all ${n.toLocaleString('en-GB')}`,
} as const;

/** `12 units, 74 kg and 2 units of unknown weight`. */
export function hangsText({ load }: HousePosition): string {
  const { units, kilograms, unknown, limit } = load;
  const extra = limit?.extra ?? 0;
  const other = extra === 0 ? '' : `, other load ${kilogramsText(extra)}`;
  if (units.length === 0) return `nothing${other}`;
  const known = unknown.length === units.length ? 'weight not known' : kilogramsText(kilograms);
  const rest = unknown.length === 0 || unknown.length === units.length ? '' : `, ${unknown.length} of unknown weight`;
  return `${counted(units.length, 'unit')}, ${known}${rest}${other}`;
}

/** `Stage main, phase 2, C16, 16 A`, as far as it is said. */
export function circuitFeedText({ supply, phase, breaker, rating }: Circuit): string {
  const parts = [
    supply,
    phase === null ? '' : `phase ${CARD_CHOICE_WORDS[phase] ?? phase}`,
    breaker,
    rating === null ? '' : ampsText(rating),
  ];
  return parts.filter((part) => part !== '').join(', ');
}

/** `turns universes into data lines, 10.0.0.5, 4 ports, at Front bridge`. */
export function nodeText({ role, address, ports, position }: NetworkNode): string {
  const parts = [
    CARD_CHOICE_WORDS[role] ?? role,
    address,
    role === 'node' ? counted(ports, 'port') : '',
    position === '' ? '' : `at ${position}`,
  ];
  return parts.filter((part) => part !== '').join(', ');
}

/** `Front of house · by sACN · sACN 1 · Beam, port 1`. */
export function routeText({ label, delivery, outlets }: UniverseRoute): string {
  const way = delivery === undefined ? 'nobody has said how it travels' : wayWords(delivery).replace(/^[^:]*: /, '');
  const ports = outlets.map(({ node, port }) => `${node.name}, port ${port.index}`);
  return [label, way, ...ports].filter((part) => part !== '').join(' · ');
}
