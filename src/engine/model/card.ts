import type { CellValue } from './field.ts';
import { foldName, isId, SEPARATOR } from './ids.ts';

/**
 * How a crew relates sACN numbers to Port-Addresses: neither standard does. `same-number`: universe 1 is 0:0:1, and 0:0:0 has
 * none; `plus-one`: universe 1 is 0:0:0. Both are in use, so that one is never taken without asking (common practice).
 */
export const CONVENTIONS = ['same-number', 'plus-one'] as const;
export type Convention = (typeof CONVENTIONS)[number];

/** What carries a universe over a network. */
export const PROTOCOLS = ['sacn', 'art-net'] as const;
export type Protocol = (typeof PROTOCOLS)[number];

/** How the numbers of the units along a position run, as seen from the stage looking at the house, or along what stands up (common practice). */
const NUMBERINGS = [
  'stage-left-first',
  'stage-right-first',
  'downstage-first',
  'upstage-first',
  'top-first',
  'bottom-first',
] as const;
export type Numbering = (typeof NUMBERINGS)[number];

/** What a cell of a card may mean: text as it stands, one of a few words, or a number of a range. */
export type CellKind =
  | { readonly is: 'text' }
  | { readonly is: 'choice'; readonly of: readonly string[] }
  | { readonly is: 'whole'; readonly from: number; readonly to: number }
  /** More than nothing, up to `to`. */
  | { readonly is: 'amount'; readonly to: number };

const TEXT = { is: 'text' } as const;
const choice = <const Of extends readonly string[]>(of: Of) => ({ is: 'choice', of }) as const;
const whole = (from: number, to: number) => ({ is: 'whole', from, to }) as const;
const amount = (to: number) => ({ is: 'amount', to }) as const;

/**
 * Every kind of card and its cells. A card is a part of a rig that is no fixture: what the crew says of its network, data lines, feeds and
 * limits. Kinds and cells are part of the document format: new ones are added, none is renamed.
 */
export const CARD_CELLS = {
  /** What holds for the whole rig. `share`: of a breaker's rating for loads of three hours or more; `reach`: metres of cable of a line. */
  setup: { convention: choice(CONVENTIONS), volts: amount(1000), share: amount(1), rules: TEXT, reach: amount(10_000) },
  /** A device of the network: `source` sends universes, `node` turns them into data lines. `together`: ports of one reply; `link`: Mbit/s. */
  node: {
    name: TEXT,
    role: choice(['source', 'node']),
    address: TEXT,
    mask: TEXT,
    ports: whole(0, 64),
    together: whole(1, 16),
    link: amount(1_000_000),
    position: TEXT,
    notes: TEXT,
  },
  /** A port of a node and the number it listens to: of sACN, or a Port-Address. */
  port: { by: choice(PROTOCOLS), number: whole(0, 65_535), notes: TEXT },
  /** How a universe travels. `cable`: out of the desk, by no network. `sender`: the id of a node. */
  delivery: {
    by: choice(['cable', ...PROTOCOLS]),
    sacn: whole(0, 65_535),
    portAddress: whole(0, 32_767),
    priority: whole(0, 200),
    cast: choice(['multicast', 'unicast', 'broadcast']),
    sender: TEXT,
    notes: TEXT,
  },
  /** A data line. `from`: as `spellSource` writes it; `lead`: metres from there to its first unit; `reach`: metres it may have. */
  run: {
    name: TEXT,
    from: TEXT,
    lead: amount(10_000),
    reach: amount(10_000),
    end: choice(['terminated', 'open']),
    notes: TEXT,
  },
  /** What makes several lines of one. `along`: its place among the units of its run; `cable`: metres from the one before. */
  splitter: {
    name: TEXT,
    run: TEXT,
    along: whole(-1_000_000_000, 1_000_000_000),
    cable: amount(10_000),
    outputs: whole(1, 64),
    notes: TEXT,
  },
  /** A feed of units. `rating`: amps of its breaker; `phase`: to neutral, or between two lines. */
  circuit: {
    name: TEXT,
    rating: amount(10_000),
    breaker: TEXT,
    supply: TEXT,
    phase: choice(['1', '2', '3', '1-2', '2-3', '3-1']),
    notes: TEXT,
    /** Where its outlet is, and what it is plugged in with. */
    position: TEXT,
    connector: TEXT,
  },
  /** What feeds circuits. `rating`: amps of each line; `volts`: between line and neutral; `third`: harmonic of its loads, share of the fundamental. */
  supply: {
    name: TEXT,
    phases: choice(['1', '3']),
    volts: amount(1000),
    rating: amount(100_000),
    third: amount(1),
    notes: TEXT,
  },
  /** What a position may hold, as somebody answers for it. `extra`: kilograms there that are no units. */
  limit: { position: TEXT, kilograms: amount(1_000_000), extra: amount(1_000_000), person: TEXT, on: TEXT },
  /** The house, as a whole. `width`, `depth`, `grid`: metres of its stage. `entry`: the way in for lorries and cases. */
  venue: {
    name: TEXT,
    address: TEXT,
    entry: TEXT,
    width: amount(1000),
    depth: amount(1000),
    grid: amount(1000),
    notes: TEXT,
  },
  /** What a venue says of a position. `trim`: metres above the stage; `first`: where its numbers begin. */
  place: { position: TEXT, first: choice(NUMBERINGS), trim: amount(1000), notes: TEXT },
  /** A data outlet of the house. `to`: where its line ends. */
  outlet: { name: TEXT, position: TEXT, carries: choice(['dmx', 'network']), to: TEXT, notes: TEXT },
  /** Stock that hangs nowhere. `where`: in which store or case. */
  spare: { type: TEXT, mode: TEXT, count: whole(0, 100_000), where: TEXT, notes: TEXT },
  contact: { name: TEXT, role: TEXT, phone: TEXT, email: TEXT, notes: TEXT },
  /** What is wrong with a unit. `unit`: its id; `called`: what it was called when the fault was seen; days as `2026-11-25`. */
  fault: {
    unit: TEXT,
    called: TEXT,
    what: TEXT,
    seenBy: TEXT,
    seenOn: TEXT,
    state: choice(['open', 'mended']),
    done: TEXT,
    doneBy: TEXT,
    doneOn: TEXT,
  },
  /** An exchange of the device that a unit is: number and address stayed. `out`, `in`: what tells the devices apart, such as serial numbers. */
  swap: { unit: TEXT, called: TEXT, out: TEXT, in: TEXT, from: TEXT, why: TEXT, by: TEXT, on: TEXT },
  /** What was read off a unit on a day: `hours` of its lamp or since its service, or the `firmware` it runs. */
  reading: {
    unit: TEXT,
    called: TEXT,
    of: choice(['lamp', 'service', 'firmware']),
    hours: amount(1_000_000),
    firmware: TEXT,
    by: TEXT,
    on: TEXT,
  },
  /** What is hired in and due back. `unit`: the id of the unit it is, where it is one. */
  hire: { item: TEXT, unit: TEXT, from: TEXT, count: whole(1, 100_000), due: TEXT, returned: TEXT, notes: TEXT },
  /** Something of a restore sheet that somebody did, or that is to stay as it is. Its key is `tickKey`; `at`: an instant, ISO 8601. */
  tick: { state: choice(['done', 'stays']), by: TEXT, at: TEXT },
} as const satisfies Readonly<Record<string, Readonly<Record<string, CellKind>>>>;

export type CardKind = keyof typeof CARD_CELLS;
export type CardField<Kind extends CardKind = CardKind> = Kind extends CardKind
  ? keyof (typeof CARD_CELLS)[Kind] & string
  : never;

export const CARD_KINDS = Object.freeze(Object.keys(CARD_CELLS)) as readonly CardKind[];

/** A card as stored: some cells. `key` tells it from others of its kind: a folded name, a number, an id of its own. */
export interface Card {
  /** Kind and key. Made by `cardId` only. */
  readonly id: string;
  readonly kind: CardKind;
  readonly key: string;
  /** The cells that hold something. */
  readonly cells: Readonly<Record<string, CellValue>>;
}

/** Sets a cell of a card; null takes it away. A card of which no cell is left is gone. */
export interface CardEdit {
  readonly kind: 'set-card';
  readonly card: CardKind;
  readonly key: string;
  readonly field: CardField;
  readonly value: CellValue;
}

/** The key of the one `setup` card, and of the one `venue` card. */
export const SETUP_KEY = 'rig';

/** Port `number`, counted from 1, of the node with an id. */
export const portKey = (node: string, number: number): string => `${node}.${number}`;

/** The key of a tick: which revision of which house rig is to be put back, by its hash, and the key of the task. */
export const tickKey = (hash: string, task: string): string => `${hash} ${task}`;

/** The key of what is told apart by its name: run, circuit, supply, limit, place, outlet. */
export const nameKey = (name: string): string => foldName(name);

export const cardId = (kind: CardKind, key: string): string => kind + SEPARATOR + key;

export function isCardField(kind: CardKind, field: string): field is CardField {
  return Object.hasOwn(CARD_CELLS[kind], field);
}

/** The longest key of a card: that of a name. */
export const CARD_KEY_LIMIT = 2000;

export function isCardKey(kind: CardKind, key: string): boolean {
  switch (kind) {
    case 'setup':
    case 'venue':
      return key === SETUP_KEY;
    case 'tick':
      return key !== '' && key.length <= CARD_KEY_LIMIT && key.trim() === key && !/\p{Cs}/u.test(key);
    case 'node':
    case 'splitter':
    case 'spare':
    case 'contact':
    case 'fault':
    case 'swap':
    case 'reading':
    case 'hire':
      return isId(key) && !key.includes('.');
    case 'port':
      return /^[^.]+\.[1-9]\d?$/.test(key) && isId(key);
    case 'delivery':
      return /^[1-9]\d{0,4}$/.test(key) && Number(key) <= 63_999;
    default:
      return key !== '' && key.length <= CARD_KEY_LIMIT && foldName(key) === key;
  }
}

export const cellKindOf = (kind: CardKind, field: CardField): CellKind =>
  (CARD_CELLS[kind] as Readonly<Record<string, CellKind>>)[field] ?? TEXT;

/** A card of some cells; undefined when none of them holds anything. */
export function makeCard(kind: CardKind, key: string, cells: Readonly<Record<string, CellValue>>): Card | undefined {
  const held = Object.keys(CARD_CELLS[kind]).flatMap((field) => {
    const value = cells[field] ?? null;
    return value === null || value === '' ? [] : [[field, value] as const];
  });
  if (held.length === 0) return undefined;
  return Object.freeze({ id: cardId(kind, key), kind, key, cells: Object.freeze(Object.fromEntries(held)) });
}

/** A card with an edit made; the same one when it says so already, undefined when nothing is left of it. */
export function withCell(card: Card | undefined, { card: kind, key, field, value }: CardEdit): Card | undefined {
  if ((card?.cells[field] ?? null) === (value === '' ? null : value)) return card;
  return makeCard(kind, key, { ...card?.cells, [field]: value });
}

/** What a stored value means in a cell; null for nothing, and for what the cell cannot mean. */
export function readCardCell(kind: CellKind, value: CellValue): CellValue {
  switch (kind.is) {
    case 'text':
      return value === null || value === '' ? null : String(value);
    case 'choice':
      return kind.of.find((word) => word === String(value ?? '')) ?? null;
    case 'whole':
      return typeof value === 'number' && Number.isInteger(value) && value >= kind.from && value <= kind.to
        ? value
        : null;
    case 'amount':
      return typeof value === 'number' && value > 0 && value <= kind.to ? value : null;
  }
}

/** A stored value as text: `parseCardCell(formatCardCell(value))` is `value`. Text that would read as a number has an apostrophe before it. */
export function formatCardCell(value: string | number): string {
  if (typeof value === 'number') return String(value);
  return parseCardCell(value) === value ? value : `'${value}`;
}

export function parseCardCell(text: string): CellValue {
  if (text === '') return null;
  if (text.startsWith("'")) return text.slice(1);
  const value = Number(text);
  return Number.isFinite(value) && String(value) === text ? value : text;
}

/**
 * What a person's text means in a cell, ready to be stored: a number where the cell is one (a comma will do for the point), the text
 * itself where it cannot be read, null for nothing.
 */
export function parseCardText(kind: CellKind, text: string): CellValue {
  const trimmed = text.trim();
  if (trimmed === '') return null;
  if (kind.is === 'whole') return /^-?\d{1,15}$/.test(trimmed) ? Number(trimmed) : trimmed;
  if (kind.is !== 'amount') return trimmed;
  const plain = trimmed.replace(',', '.');
  return /^\d{1,12}(\.\d{1,6})?$/.test(plain) ? Number(plain) : trimmed;
}
