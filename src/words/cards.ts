import type { CARD_CELLS, CardField, CardKind } from '#engine/model/card.ts';

/** What a kind of card is called in a sentence. */
export const CARD_WORDS: Readonly<Record<CardKind, string>> = {
  setup: 'set-up',
  node: 'node',
  port: 'port',
  delivery: 'universe',
  run: 'run',
  splitter: 'splitter',
  circuit: 'circuit',
  supply: 'supply',
  limit: 'limit of position',
};

/** What each cell of a card is called in a sentence. */
const CARD_CELL_WORDS: {
  readonly [Kind in CardKind]: Readonly<Record<keyof (typeof CARD_CELLS)[Kind], string>>;
} = {
  setup: {
    convention: 'convention of numbers',
    volts: 'nominal voltage',
    share: 'share for continuous loads',
    rules: 'name of the rules',
    reach: 'length of a line',
  },
  node: {
    name: 'name',
    role: 'role',
    address: 'network address',
    mask: 'network mask',
    ports: 'number of ports',
    together: 'ports of one reply',
    link: 'speed of the link',
    position: 'position',
    notes: 'notes',
  },
  port: { by: 'protocol', number: 'number it listens to', notes: 'notes' },
  delivery: {
    by: 'way of delivery',
    sacn: 'sACN number',
    portAddress: 'Port-Address',
    priority: 'priority',
    cast: 'way of sending',
    sender: 'sender',
    notes: 'notes',
  },
  run: {
    name: 'name',
    from: 'beginning',
    lead: 'metres to the first unit',
    reach: 'greatest length',
    end: 'end of the line',
    notes: 'notes',
  },
  splitter: {
    name: 'name',
    run: 'run',
    along: 'place on the run',
    cable: 'metres of cable',
    outputs: 'number of outputs',
    notes: 'notes',
  },
  circuit: { name: 'name', rating: 'rating', breaker: 'breaker', supply: 'supply', phase: 'phase', notes: 'notes' },
  supply: {
    name: 'name',
    phases: 'number of phases',
    volts: 'voltage',
    rating: 'rating of a line',
    third: 'third harmonic',
    notes: 'notes',
  },
  limit: { position: 'position', kilograms: 'limit in kg', extra: 'other load in kg', person: 'person', on: 'day' },
};

export const cardCellWords = (kind: CardKind, field: CardField): string =>
  (CARD_CELL_WORDS[kind] as Readonly<Record<string, string>>)[field] ?? field;

/** The words that a cell may be, as they read on screen. */
export const CARD_CHOICE_WORDS: Readonly<Record<string, string>> = {
  'same-number': 'same number: universe 1 is 0:0:1',
  'plus-one': 'plus one: universe 1 is 0:0:0',
  source: 'sends universes',
  node: 'turns universes into data lines',
  sacn: 'sACN',
  'art-net': 'Art-Net',
  cable: 'cable',
  multicast: 'multicast',
  unicast: 'unicast',
  broadcast: 'broadcast',
  terminated: 'terminated',
  open: 'open',
  '1': '1',
  '2': '2',
  '3': '3',
  '1-2': '1–2',
  '2-3': '2–3',
  '3-1': '3–1',
};

export const CARD_SCREEN_WORDS = {
  notSaid: 'not said',
  unread: (cell: string) => `This cannot be the ${cell}. Correct it.`,
} as const;
