import { describe, expect, it } from 'vitest';
import { type Rng, seededRng } from '#base/rng.ts';
import { createTypeIndex, type SearchedType } from './search-types.ts';

describe('createTypeIndex', () => {
  it('[FT11] finds what a naive look at every field finds, in the same order', () => {
    let found = 0;
    for (let seed = 1; seed <= 30; seed++) {
      const rng = seededRng(seed);
      const rows = Array.from({ length: 60 }, () => randomRow(rng));
      const index = createTypeIndex(rows);
      for (let i = 0; i < 30; i++) {
        const query = randomQuery(rng, rows);
        const naive = naively(rows, query);
        expect(index.search(query, 500), `seed ${seed}: “${query}”`).toEqual({ rows: naive, found: naive.length });
        expect(index.search(query, 3)).toEqual({ rows: naive.slice(0, 3), found: naive.length });
        found += naive.length;
      }
    }
    expect(found).toBeGreaterThan(1000);
  });

  it('[FT11] finds words anywhere, without case and accents', () => {
    expect(found('veld')).toEqual(['Vélder Ambra 12', 'Veldkamp Spot']);
    expect(found('VÉLD')).toEqual(['Vélder Ambra 12', 'Veldkamp Spot']);
    expect(found('mbra veld')).toEqual(['Vélder Ambra 12']);
    expect(found('strasse')).toEqual(['Größe Straße']);
    expect(found('ambra spot')).toEqual([]);
    expect(found('')).toHaveLength(ROWS.length);
  });

  it('[FT11] finds numbers of slots, with and without the word', () => {
    expect(found('27')).toEqual(['Orlo 27 Lamp', 'Veldkamp Spot']);
    expect(found('27 slots')).toEqual(['Veldkamp Spot']);
    expect(found('spot 27 slots')).toEqual(['Veldkamp Spot']);
    expect(found('8 slots')).toEqual(['Orlo 27 Lamp']);
    expect(found('slots')).toEqual([]);
  });

  it('[FT11] puts the model itself first, then its start, then the start of its maker', () => {
    expect(found('lamp')).toEqual(['Sol Lamp', 'Sol Lamp 2', 'Lamp Works Duo', 'Orlo 27 Lamp']);
  });
});

/** `Maker|Model|mode 4+4, mode`: a type with its modes and their slots. */
function row(text: string): SearchedType {
  const [maker = '', model = '', modes = ''] = text.split('|');
  return {
    maker,
    model,
    shortName: '',
    modes: modes.split(', ').map((each) => {
      const [, name = '', slots = ''] = /^(.*) ([\d+]+)$/.exec(each) ?? [];
      return { name, footprints: slots.split('+').map(Number) };
    }),
  };
}

const ROWS = [
  'Vélder|Ambra 12|Basic 4, Full 9',
  'Veldkamp|Spot|Extended 27',
  'Größe|Straße|A 1',
  'Orlo|27 Lamp|A 4+4',
  'Lamp Works|Duo|A 2',
  'Sol|Lamp 2|A 3',
  'Sol|Lamp|A 3',
].map(row);

const found = (query: string) =>
  createTypeIndex(ROWS)
    .search(query, 50)
    .rows.map(({ maker, model }) => `${maker} ${model}`);

const WORDS = [
  'Orlo',
  'Works',
  'Spot',
  'Wash',
  'É',
  'lamp',
  '12',
  '7',
  'Ñandú',
  'x',
  'slots',
  'ss',
  'Größe',
  '16 slots',
];

function randomRow(rng: Rng): SearchedType {
  const text = () => Array.from({ length: 1 + rng.int(3) }, () => rng.pick(WORDS)).join(rng.pick([' ', '  ', '-']));
  const modes = Array.from({ length: rng.int(4) }, () => ({
    name: text(),
    footprints: Array.from({ length: rng.int(3) }, () => rng.int(20)),
  }));
  return { maker: text(), model: text(), shortName: rng.pick(['', text()]), modes };
}

function randomQuery(rng: Rng, rows: readonly SearchedType[]): string {
  const { maker, model } = rng.pick(rows);
  const from = rng.int(model.length);
  const piece = model.slice(from, from + 1 + rng.int(6));
  return rng.pick([
    piece,
    `${piece} ${rng.pick(WORDS)}`,
    model.toUpperCase(),
    `${maker} ${model}`,
    `${rng.int(30)} slots`,
    `${rng.int(30)}`,
    `${rng.pick(WORDS)} ${rng.int(20)} slot`,
    ' ',
  ]);
}

/** The rule word for word, with the platform's own comparison of letters and no index. */
function naively(rows: readonly SearchedType[], query: string): readonly SearchedType[] {
  const asked = bare(query);
  const words = asked.split(' ').filter((word) => word !== '');
  const has = (type: SearchedType, text: string) =>
    [type.maker, type.model, type.shortName, ...type.modes.map((mode) => mode.name)].some((field) =>
      bare(field).includes(text),
    );
  const slots = (type: SearchedType, word: string | undefined) =>
    /^\d+$/.test(word ?? '') &&
    type.modes.some((mode) => [...mode.footprints, mode.footprints.reduce((a, b) => a + b, 0)].includes(Number(word)));
  const holds = (type: SearchedType) =>
    words.every((word, at) => {
      if (/^slots?$/.test(word) && slots(type, words[at - 1])) return true;
      const counts = /^\d+$/.test(word) && /^slots?$/.test(words[at + 1] ?? '');
      return slots(type, word) || has(type, counts ? `${word} ${words[at + 1]}` : word);
    });
  const rank = (type: SearchedType) => {
    const name = `${bare(type.maker)} ${bare(type.model)}`;
    if (words.length === 0) return 0;
    if ([bare(type.model), bare(type.shortName), name].includes(asked)) return 0;
    return bare(type.model).startsWith(asked) ? 1 : name.startsWith(asked) ? 2 : 3;
  };
  return rows
    .map((type, at) => ({ type, at }))
    .filter(({ type }) => holds(type))
    .sort((a, b) => rank(a.type) - rank(b.type) || a.at - b.at)
    .map(({ type }) => type);
}

const BARE = new Map<string, string>();

/** Letter by letter, each taken for the plain one that a base-sensitive comparison says it is. */
function bare(text: string): string {
  const known = BARE.get(text);
  if (known !== undefined) return known;
  const letters = [...text].flatMap((letter) => (letter === 'ß' ? ['s', 's'] : [letter]));
  const plain = letters.map((letter) => [...PLAIN].find((each) => COMPARE(each, letter) === 0) ?? letter).join('');
  const said = plain.replace(/\s+/g, ' ').trim();
  BARE.set(text, said);
  return said;
}

const PLAIN = 'abcdefghijklmnopqrstuvwxyz0123456789';
const COMPARE = new Intl.Collator('en', { sensitivity: 'base' }).compare;
