import { type Rng, seededRng } from '#base/rng.ts';

/** Slots of a universe. */
export const CAPACITY = 512;

export interface Mix {
  readonly name: string;
  readonly widths: readonly number[];
  /** Known where the widths were cut from whole universes. */
  readonly optimum: number | undefined;
}

/** Widths as rigs have them: of a few kinds, of any kind, and universes cut to pieces so that the optimum is known. */
export function rigMixes(fixtures: number): readonly Mix[] {
  const rng = seededRng(11);
  const picked = (widths: readonly number[]) => Array.from({ length: fixtures }, () => rng.pick(widths));
  const thirds = Math.ceil(fixtures / 3);
  const cuts = Array.from({ length: Math.ceil(fixtures / 6) }, () => cut(rng));
  return [
    { name: 'dimmers to moving units', widths: picked([1, 4, 6, 10, 14, 16, 20, 24, 27, 34]), optimum: undefined },
    { name: 'large units', widths: picked([37, 48, 72, 112, 135, 170, 180]), optimum: undefined },
    { name: 'any width', widths: Array.from({ length: fixtures }, () => 1 + rng.int(CAPACITY)), optimum: undefined },
    {
      name: 'universes cut in three',
      widths: Array.from({ length: thirds }, () => triplet(rng)).flat(),
      optimum: thirds,
    },
    { name: 'universes cut to pieces', widths: cuts.flat(), optimum: cuts.length },
    { name: 'four large modes', widths: picked([112, 135, 170, 180]), optimum: undefined },
    { name: 'five near a half', widths: picked([150, 180, 200, 220, 240]), optimum: undefined },
    { name: 'five large modes', widths: picked([100, 130, 140, 180, 210]), optimum: undefined },
  ];
}

interface Construction {
  readonly name: string;
  readonly make: (rng: Rng) => readonly number[];
  /** Bins by construction, of so many widths. */
  readonly optimum?: number;
}

const uniform = (count: number, least: number, most: number) => (rng: Rng) =>
  Array.from({ length: count }, () => least + rng.int(most - least + 1));

const triplets = (bins: number) => (rng: Rng) => Array.from({ length: bins }, () => triplet(rng)).flat();

/**
 * Instances of our own, made as the literature makes those that packing is measured on, with sizes scaled to 512. The constructions are
 * from memory:
 *
 * - u: uniform from 20 to 100 of 150; t: triplets that fill a bin, sizes of a quarter to a half. E. Falkenauer, A hybrid grouping genetic algorithm
 *   for bin packing (1996).
 * - wide: 1 to 100 of 100; few: a third of a bin, 20 % and 50 % up and down; hard: 200 sizes of 20,000 to 35,000 of 100,000.
 *   A. Scholl, R. Klein, C. Jürgens, Bison (1997), its three data sets.
 * - sixths: 150 to 200 of 1,000. P. Schwerin, G. Wäscher, The bin-packing problem: a problem generator (1997).
 */
const CONSTRUCTIONS: readonly Construction[] = [
  { name: 'u120', make: uniform(120, 68, 341) },
  { name: 'u250', make: uniform(250, 68, 341) },
  { name: 'u500', make: uniform(500, 68, 341) },
  { name: 'u1000', make: uniform(1000, 68, 341) },
  { name: 't60', make: triplets(20), optimum: 20 },
  { name: 't120', make: triplets(40), optimum: 40 },
  { name: 't249', make: triplets(83), optimum: 83 },
  { name: 't501', make: triplets(167), optimum: 167 },
  { name: 'wide', make: uniform(200, 1, 512) },
  { name: 'few, 20 %', make: uniform(200, 137, 204) },
  { name: 'few, 50 %', make: uniform(200, 86, 256) },
  { name: 'hard', make: uniform(200, 103, 179) },
  { name: 'sixths', make: uniform(120, 77, 102) },
];

/** Some instances of each published construction, seeded. */
export function publishedMixes(each: number): readonly Mix[] {
  return CONSTRUCTIONS.flatMap(({ name, make, optimum }) =>
    Array.from({ length: each }, (_, at) => ({ name, widths: make(seededRng(1000 + at)), optimum })),
  );
}

/** A universe cut into one part above a third and two near a quarter: the hard kind, since only few threes fill one. */
function triplet(rng: Rng): readonly number[] {
  const first = 195 + rng.int(61);
  const second = 129 + rng.int(Math.floor((CAPACITY - first) / 2) - 128);
  return [first, second, CAPACITY - first - second];
}

function cut(rng: Rng): readonly number[] {
  const pieces: number[] = [];
  for (let left = CAPACITY; left > 0; ) {
    const piece = Math.min(left, 40 + rng.int(120));
    pieces.push(piece);
    left -= piece;
  }
  return pieces;
}
