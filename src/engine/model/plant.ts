import { memoByIdentity } from '#base/memo.ts';
import { rowsOf, type Table } from '#base/table.ts';
import type { Universe } from './address.ts';
import { type Card, type CardKind, type Convention, nameKey, type Protocol } from './card.ts';
import { compareNatural } from './natural-order.ts';
import { nameOfCard, numberIn, textIn, type UnreadableCardCell, unreadableCells, wordIn } from './read-card.ts';
import { parseSource, type RunSource } from './run-source.ts';

/** What holds for the whole rig; null where nobody has said. */
interface Setup {
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
  /** Where its outlet is, and what it is plugged in with. */
  readonly position: string;
  readonly connector: string;
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
  const all = [...rowsOf(cards)];
  // A record may hold thousands of cards, and says nothing of the plant.
  const sorted = all.filter(({ kind }) => PLANT_KINDS.has(kind)).sort(byName);
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
    unreadable: all.filter(isUnread).sort(byName).flatMap(unreadableCells),
  });
}

const PLANT_KINDS: ReadonlySet<CardKind> = new Set<CardKind>([
  'setup',
  'node',
  'port',
  'delivery',
  'run',
  'splitter',
  'circuit',
  'supply',
  'limit',
]);

const byName = (a: Card, b: Card) => compareNatural(nameOfCard(a), nameOfCard(b)) || (a.id < b.id ? -1 : 1);
const isUnread = (card: Card) => unreadableCells(card).length > 0;

const setupOf = (card: Card | undefined): Setup =>
  Object.freeze({
    convention: wordIn<Convention>(card, 'convention'),
    volts: numberIn(card, 'volts'),
    share: numberIn(card, 'share'),
    rules: card === undefined ? '' : textIn(card, 'rules'),
    reach: numberIn(card, 'reach'),
  });

function nodeOf(card: Card): NetworkNode | undefined {
  const name = textIn(card, 'name');
  if (name === '') return undefined;
  return Object.freeze({
    id: card.key,
    name,
    role: wordIn<NetworkNode['role']>(card, 'role') ?? 'node',
    address: textIn(card, 'address'),
    mask: textIn(card, 'mask'),
    ports: numberIn(card, 'ports') ?? 0,
    together: numberIn(card, 'together'),
    link: numberIn(card, 'link'),
    position: textIn(card, 'position'),
    notes: textIn(card, 'notes'),
  });
}

function portOf(card: Card): Port | undefined {
  const dot = card.key.lastIndexOf('.');
  return Object.freeze({
    key: card.key,
    node: card.key.slice(0, dot),
    index: Number(card.key.slice(dot + 1)),
    by: wordIn<Protocol>(card, 'by'),
    number: numberIn(card, 'number'),
    notes: textIn(card, 'notes'),
  });
}

function deliveryOf(card: Card): Delivery | undefined {
  const by = wordIn<Delivery['by']>(card, 'by');
  if (by === null) return undefined;
  return Object.freeze({
    universe: Number(card.key) as Universe,
    by,
    sacn: numberIn(card, 'sacn'),
    portAddress: numberIn(card, 'portAddress'),
    priority: numberIn(card, 'priority'),
    cast: wordIn<NonNullable<Delivery['cast']>>(card, 'cast'),
    sender: textIn(card, 'sender'),
    notes: textIn(card, 'notes'),
  });
}

function runOf(card: Card): Run | undefined {
  const name = textIn(card, 'name');
  if (name === '') return undefined;
  return Object.freeze({
    key: card.key,
    name,
    from: parseSource(textIn(card, 'from')),
    lead: numberIn(card, 'lead'),
    reach: numberIn(card, 'reach'),
    end: wordIn<NonNullable<Run['end']>>(card, 'end'),
    notes: textIn(card, 'notes'),
  });
}

function splitterOf(card: Card): Splitter | undefined {
  const name = textIn(card, 'name');
  if (name === '') return undefined;
  return Object.freeze({
    id: card.key,
    name,
    run: textIn(card, 'run'),
    along: numberIn(card, 'along') ?? 0,
    cable: numberIn(card, 'cable'),
    outputs: numberIn(card, 'outputs') ?? 1,
    notes: textIn(card, 'notes'),
  });
}

function circuitOf(card: Card): Circuit | undefined {
  const name = textIn(card, 'name');
  if (name === '') return undefined;
  return Object.freeze({
    key: card.key,
    name,
    rating: numberIn(card, 'rating'),
    breaker: textIn(card, 'breaker'),
    supply: textIn(card, 'supply'),
    phase: wordIn<NonNullable<Circuit['phase']>>(card, 'phase'),
    notes: textIn(card, 'notes'),
    position: textIn(card, 'position'),
    connector: textIn(card, 'connector'),
  });
}

function supplyOf(card: Card): Supply | undefined {
  const name = textIn(card, 'name');
  if (name === '') return undefined;
  return Object.freeze({
    key: card.key,
    name,
    phases: textIn(card, 'phases') === '1' ? 1 : 3,
    volts: numberIn(card, 'volts'),
    rating: numberIn(card, 'rating'),
    third: numberIn(card, 'third'),
    notes: textIn(card, 'notes'),
  });
}

function limitOf(card: Card): Limit | undefined {
  const position = textIn(card, 'position');
  const kilograms = numberIn(card, 'kilograms');
  if (position === '' || kilograms === null) return undefined;
  return Object.freeze({
    key: card.key,
    position,
    kilograms,
    extra: numberIn(card, 'extra') ?? 0,
    person: textIn(card, 'person'),
    on: textIn(card, 'on'),
  });
}
