import { memoByIdentity } from '#base/memo.ts';
import { rowsOf, type Table } from '#base/table.ts';
import type { Universe } from './address.ts';
import {
  CARD_CELLS,
  type Card,
  type CardField,
  type CardKind,
  type Convention,
  cellKindOf,
  nameKey,
  type Protocol,
  portKey,
  readCardCell,
} from './card.ts';
import { compareNatural } from './natural-order.ts';

/** What holds for the whole rig; null where nobody has said. */
export interface Setup {
  readonly convention: Convention | null;
  /** Nominal, between the two conductors of a circuit. */
  readonly volts: number | null;
  /** Of a breaker's rating, for loads of three hours or more; null: all of it. */
  readonly share: number | null;
  /** The name of the rules that voltage and share are taken from. */
  readonly rules: string;
  /** Metres of cable that a data line may have. */
  readonly reach: number | null;
}

/** A device of the network: `source` sends universes, `node` turns them into data lines. Addresses are as somebody wrote them. */
export interface NetworkNode {
  readonly id: string;
  readonly name: string;
  readonly role: 'source' | 'node';
  readonly address: string;
  readonly mask: string;
  /** How many it has. */
  readonly ports: number;
  /** Ports of one reply, which share Net and Sub-Net; null: not known. */
  readonly together: number | null;
  /** Mbit/s of its link; null: not known. */
  readonly link: number | null;
  readonly position: string;
  readonly notes: string;
}

/** An output of a node. */
export interface Port {
  readonly key: string;
  readonly node: string;
  /** Counted from 1. */
  readonly index: number;
  readonly by: Protocol | null;
  /** The number it listens to: of sACN, or a Port-Address. */
  readonly number: number | null;
  readonly notes: string;
}

/** How a universe travels. Its own number, the sACN number and the Port-Address are three things. */
export interface Delivery {
  readonly universe: Universe;
  readonly by: Protocol | 'cable';
  readonly sacn: number | null;
  readonly portAddress: number | null;
  readonly priority: number | null;
  readonly cast: 'multicast' | 'unicast' | 'broadcast' | null;
  /** Id of the node that sends it; empty: not known. */
  readonly sender: string;
  readonly notes: string;
}

/** Where a data line begins. `cable`: at the desk itself, which sends a universe there. */
export type RunSource =
  | { readonly kind: 'none' }
  | { readonly kind: 'port'; readonly port: string }
  | { readonly kind: 'splitter'; readonly splitter: string; readonly output: number }
  | { readonly kind: 'cable'; readonly universe: Universe };

export interface Run {
  /** Its folded name. */
  readonly key: string;
  readonly name: string;
  readonly from: RunSource;
  /** Metres from there to its first unit; null: not known. */
  readonly lead: number | null;
  /** Metres of cable it may have; null: as the setup says. */
  readonly reach: number | null;
  readonly end: 'terminated' | 'open' | null;
  readonly notes: string;
}

/** What a run is called: its name, unless somebody wrote another run's name into it. No two runs are called the same. */
export const runName = ({ key, name }: Pick<Run, 'key' | 'name'>): string => (nameKey(name) === key ? name : key);

export interface Splitter {
  readonly id: string;
  readonly name: string;
  /** The name of the run it is on; empty: on none. */
  readonly run: string;
  readonly along: number;
  /** Metres from what is before it on the run; null: not known. */
  readonly cable: number | null;
  readonly outputs: number;
  readonly notes: string;
}

export interface Circuit {
  /** Its folded name. */
  readonly key: string;
  readonly name: string;
  /** Amps of its breaker; null: not known. */
  readonly rating: number | null;
  readonly breaker: string;
  readonly supply: string;
  readonly phase: '1' | '2' | '3' | '1-2' | '2-3' | '3-1' | null;
  readonly notes: string;
}

export interface Supply {
  /** Its folded name. */
  readonly key: string;
  readonly name: string;
  readonly phases: 1 | 3;
  /** Between line and neutral; null: as the setup says. */
  readonly volts: number | null;
  /** Amps of each line; null: not known. */
  readonly rating: number | null;
  /** The third harmonic of its loads as a share of the fundamental; null: taken for linear. */
  readonly third: number | null;
  readonly notes: string;
}

/** What a position may hold, by the word of somebody. */
export interface Limit {
  /** The folded name of the position. */
  readonly key: string;
  readonly position: string;
  readonly kilograms: number;
  /** Kilograms there that are no units. */
  readonly extra: number;
  readonly person: string;
  /** As somebody wrote it: `2026-11-25`. */
  readonly on: string;
}

/** A cell of a card that cannot be what stands in it. */
export interface UnreadableCardCell {
  readonly card: CardKind;
  readonly key: string;
  /** The name of the card, or what it is known by. */
  readonly of: string;
  readonly field: CardField;
  readonly value: string | number;
}

/** All that a crew says of network, lines, feeds and limits. Lists in natural order of names; a card without its name is not there. */
export interface Plant {
  readonly setup: Setup;
  readonly nodes: readonly NetworkNode[];
  /** By node and index; those of a node that are said. */
  readonly ports: ReadonlyMap<string, Port>;
  readonly deliveries: ReadonlyMap<number, Delivery>;
  readonly runs: ReadonlyMap<string, Run>;
  readonly splitters: readonly Splitter[];
  readonly circuits: ReadonlyMap<string, Circuit>;
  readonly supplies: ReadonlyMap<string, Supply>;
  readonly limits: ReadonlyMap<string, Limit>;
  readonly unreadable: readonly UnreadableCardCell[];
}

/** What the cards of a rig amount to. Any cards at all have an answer. */
export const plantOf: (cards: Table<Card>) => Plant = memoByIdentity(readPlant);

function readPlant(cards: Table<Card>): Plant {
  const sorted = [...rowsOf(cards)].sort((a, b) => compareNatural(nameOf(a), nameOf(b)) || (a.id < b.id ? -1 : 1));
  const of = <Row>(kind: CardKind, read: (card: Card) => Row | undefined): Row[] =>
    sorted.filter((card) => card.kind === kind).flatMap((card) => read(card) ?? []);
  const byKey = <Row extends { readonly key: string }>(rows: readonly Row[]) =>
    new Map(rows.map((row) => [row.key, row] as const));
  return Object.freeze({
    setup: setupOf(sorted.find((card) => card.kind === 'setup')),
    nodes: of('node', nodeOf),
    ports: byKey(of('port', portOf)),
    deliveries: new Map(of('delivery', deliveryOf).map((delivery) => [delivery.universe, delivery] as const)),
    runs: byKey(of('run', runOf)),
    splitters: of('splitter', splitterOf),
    circuits: byKey(of('circuit', circuitOf)),
    supplies: byKey(of('supply', supplyOf)),
    limits: byKey(of('limit', limitOf)),
    unreadable: sorted.flatMap(unreadableOf),
  });
}

const nameOf = (card: Card) => String(card.cells.name ?? card.cells.position ?? card.key);

/** A cell of a card as it may be meant, null else. */
function read(card: Card | undefined, field: CardField): string | number | null {
  return card === undefined ? null : readCardCell(cellKindOf(card.kind, field), card.cells[field] ?? null);
}

// What a choice may be is written once, in CARD_CELLS: its reader gives nothing else.
const text = (card: Card, field: CardField) => String(read(card, field) ?? '');
const number = (card: Card | undefined, field: CardField) => read(card, field) as number | null;
const word = <Word extends string>(card: Card | undefined, field: CardField) => read(card, field) as Word | null;

const setupOf = (card: Card | undefined): Setup =>
  Object.freeze({
    convention: word<Convention>(card, 'convention'),
    volts: number(card, 'volts'),
    share: number(card, 'share'),
    rules: card === undefined ? '' : text(card, 'rules'),
    reach: number(card, 'reach'),
  });

function nodeOf(card: Card): NetworkNode | undefined {
  const name = text(card, 'name');
  if (name === '') return undefined;
  return Object.freeze({
    id: card.key,
    name,
    role: word<NetworkNode['role']>(card, 'role') ?? 'node',
    address: text(card, 'address'),
    mask: text(card, 'mask'),
    ports: number(card, 'ports') ?? 0,
    together: number(card, 'together'),
    link: number(card, 'link'),
    position: text(card, 'position'),
    notes: text(card, 'notes'),
  });
}

function portOf(card: Card): Port | undefined {
  const dot = card.key.lastIndexOf('.');
  return Object.freeze({
    key: card.key,
    node: card.key.slice(0, dot),
    index: Number(card.key.slice(dot + 1)),
    by: word<Protocol>(card, 'by'),
    number: number(card, 'number'),
    notes: text(card, 'notes'),
  });
}

function deliveryOf(card: Card): Delivery | undefined {
  const by = word<Delivery['by']>(card, 'by');
  if (by === null) return undefined;
  return Object.freeze({
    universe: Number(card.key) as Universe,
    by,
    sacn: number(card, 'sacn'),
    portAddress: number(card, 'portAddress'),
    priority: number(card, 'priority'),
    cast: word<NonNullable<Delivery['cast']>>(card, 'cast'),
    sender: text(card, 'sender'),
    notes: text(card, 'notes'),
  });
}

function runOf(card: Card): Run | undefined {
  const name = text(card, 'name');
  if (name === '') return undefined;
  return Object.freeze({
    key: card.key,
    name,
    from: parseSource(text(card, 'from')),
    lead: number(card, 'lead'),
    reach: number(card, 'reach'),
    end: word<NonNullable<Run['end']>>(card, 'end'),
    notes: text(card, 'notes'),
  });
}

function splitterOf(card: Card): Splitter | undefined {
  const name = text(card, 'name');
  if (name === '') return undefined;
  return Object.freeze({
    id: card.key,
    name,
    run: text(card, 'run'),
    along: number(card, 'along') ?? 0,
    cable: number(card, 'cable'),
    outputs: number(card, 'outputs') ?? 1,
    notes: text(card, 'notes'),
  });
}

function circuitOf(card: Card): Circuit | undefined {
  const name = text(card, 'name');
  if (name === '') return undefined;
  return Object.freeze({
    key: card.key,
    name,
    rating: number(card, 'rating'),
    breaker: text(card, 'breaker'),
    supply: text(card, 'supply'),
    phase: word<NonNullable<Circuit['phase']>>(card, 'phase'),
    notes: text(card, 'notes'),
  });
}

function supplyOf(card: Card): Supply | undefined {
  const name = text(card, 'name');
  if (name === '') return undefined;
  return Object.freeze({
    key: card.key,
    name,
    phases: text(card, 'phases') === '1' ? 1 : 3,
    volts: number(card, 'volts'),
    rating: number(card, 'rating'),
    third: number(card, 'third'),
    notes: text(card, 'notes'),
  });
}

function limitOf(card: Card): Limit | undefined {
  const position = text(card, 'position');
  const kilograms = number(card, 'kilograms');
  if (position === '' || kilograms === null) return undefined;
  return Object.freeze({
    key: card.key,
    position,
    kilograms,
    extra: number(card, 'extra') ?? 0,
    person: text(card, 'person'),
    on: text(card, 'on'),
  });
}

function unreadableOf(card: Card): UnreadableCardCell[] {
  return (Object.keys(CARD_CELLS[card.kind]) as CardField[]).flatMap((field) => {
    const value = card.cells[field] ?? null;
    if (value === null || read(card, field) !== null) return [];
    return [Object.freeze({ card: card.kind, key: card.key, of: nameOf(card), field, value })];
  });
}

const NO_SOURCE: RunSource = Object.freeze({ kind: 'none' });

/** Where a run begins, as its cell has it; the inverse of `spellSource`. What is no source is none. */
export function parseSource(cell: string): RunSource {
  const [kind, at = ''] = cell.split(/ (.*)/s);
  const output = /^(.+)\.([1-9]\d?)$/s.exec(at);
  if (kind === 'port' && output !== null) return { kind, port: at };
  if (kind === 'splitter' && output !== null) {
    return { kind, splitter: output[1] ?? '', output: Number(output[2]) };
  }
  const universe = Number(at);
  if (kind === 'cable' && /^[1-9]\d{0,4}$/.test(at) && universe <= 63_999)
    return { kind, universe: universe as Universe };
  return NO_SOURCE;
}

/** Where a run begins, as its cell keeps it: `port NODE.1`, `splitter ID.2`, `cable 3`; empty for nowhere. */
export function spellSource(source: RunSource): string {
  switch (source.kind) {
    case 'none':
      return '';
    case 'port':
      return `port ${source.port}`;
    case 'splitter':
      return `splitter ${portKey(source.splitter, source.output)}`;
    case 'cable':
      return `cable ${source.universe}`;
  }
}
