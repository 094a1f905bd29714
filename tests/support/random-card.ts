import type { Rng } from '#base/rng.ts';
import { CARD_CELLS, CARD_KINDS, type CardEdit, type CardField, type CardKind, isCardKey } from '#engine/model/card.ts';
import type { CellValue } from '#engine/model/field.ts';

/** Keys of every kind, few enough that edits meet; runs and circuits have the names that `randomRig` gives them. */
const KEYS = [
  'rig',
  'n1',
  'n2',
  's1',
  'n1.1',
  'n1.2',
  'n1.3',
  'n1.4',
  'n2.1',
  '1',
  '2',
  '3',
  'front',
  'back',
  'main',
  'lx 1',
  'floor',
];

/** Of some kinds fewer, so that what names them finds them. */
const KEYS_OF: Partial<Readonly<Record<CardKind, readonly string[]>>> = {
  supply: ['main', 'floor'],
  circuit: ['front', 'back', 'main'],
  limit: ['lx 1', 'floor'],
};

const VALUES: Partial<Readonly<Record<CardField, readonly CellValue[]>>> = {
  convention: ['same-number', 'plus-one'],
  volts: [230, 120],
  share: [0.8, 0.1, 0.01],
  reach: [5, 300],
  role: ['node', 'source'],
  address: ['2.0.0.1', '10.0.0.1'],
  mask: ['255.0.0.0', '/24'],
  ports: [1, 4, 4],
  together: [1, 4, 4],
  link: [0.1, 100],
  by: ['sacn', 'art-net', 'art-net', 'sacn', 'cable'],
  number: [0, 1, 1, 17, 17, 64_000],
  sacn: [1, 1, 2, 64_000],
  portAddress: [0, 1, 1, 17],
  cast: ['multicast', 'unicast', 'broadcast'],
  sender: ['s1', 'n1'],
  from: [
    'port n1.1',
    'port n2.1',
    'port n1.9',
    'splitter s1.1',
    'splitter s1.3',
    'splitter gone.1',
    'cable 1',
    'cable 2',
  ],
  lead: [1, 200],
  end: ['terminated', 'open'],
  run: ['front', 'back'],
  along: [0, 1, 2],
  cable: [1, 100],
  outputs: [1, 4],
  rating: [1, 10, 16, 40, 400],
  supply: ['main', 'gone'],
  phase: ['1', '2', '3', '1-2'],
  breaker: ['B16', 'breaker'],
  person: ['Ona Reeve'],
  phases: [1, 3],
  third: [0.3],
  kilograms: [10, 500],
  extra: [5],
  position: ['LX 1', 'Floor'],
  first: ['stage-left-first', 'top-first'],
  trim: [6.5],
  width: [12],
  carries: ['dmx', 'network'],
  count: [1, 12],
  state: ['open', 'mended', 'done', 'stays'],
  of: ['lamp', 'service', 'firmware'],
  hours: [0.5, 1200],
  unit: ['f1', 'f2'],
  on: ['2026-11-25', '2026-11-02'],
  due: ['2026-12-01', '2026-11-30'],
};

/** What units and other cards name most. */
const FAVOURED: Partial<Readonly<Record<CardKind, readonly string[]>>> = { run: ['front', 'back'], splitter: ['s1'] };

/** The key, as the name that people gave it. */
const nameFrom = (key: string) => key.toUpperCase();

/** Nodes and splitters have few ids, so that ports, senders and lines meet one that is there. */
const suits = (card: CardKind, key: string) => (card !== 'node' && card !== 'splitter') || /^[ns]\d$/.test(key);

/** An edit of one of few cards: mostly what its cell means, now and then what it cannot. */
export function randomCardEdit(rng: Rng, kinds: readonly CardKind[] = CARD_KINDS): CardEdit {
  const card = rng.pick(kinds);
  const some = KEYS.filter((each) => isCardKey(card, each) && suits(card, each));
  const key = rng.pick(KEYS_OF[card] ?? ((rng.int(2) === 0 && FAVOURED[card]) || some));
  const fields = Object.keys(CARD_CELLS[card]) as CardField[];
  // Most cards are nothing without their name, so that it comes more often than the rest.
  const field = fields.includes('name') && rng.int(3) === 0 ? 'name' : rng.pick(fields);
  const dice = rng.int(12);
  if (dice === 0) return { kind: 'set-card', card, key, field, value: null };
  if (dice === 1) return { kind: 'set-card', card, key, field, value: rng.pick(['odd', -1, 2.5, 1e9]) };
  return { kind: 'set-card', card, key, field, value: rng.pick(VALUES[field] ?? [nameFrom(key)]) };
}
