import { type Rng, seededRng } from '#base/rng.ts';
import { createTypeIndex, type SearchedType } from '#engine/type/search-types.ts';
import type { Outcome } from './frame/bench.ts';
import { percentile, spellTime } from './frame/measure.ts';

export const name = 'types';
export const bar = 'p95<=16 ms a keystroke at 5,000 types, <=1.0x a plain filter over joined lower-case strings';

/** Typing searches letter by letter into a library. The baseline joins and folds every row's words at every keystroke. */
export function run({ smoke }: { readonly smoke: boolean }): Outcome {
  const rng = seededRng(11);
  const rows = Array.from({ length: smoke ? 200 : 5000 }, (_, at) => typeRow(rng, at));
  const built = timed(() => createTypeIndex(rows));
  const index = built.value;
  const keystrokes = Array.from({ length: smoke ? 5 : 60 }, () => searchOf(rng, rows)).flatMap(typed);
  const warm = keystrokes.slice(0, keystrokes.length / 4);
  for (const query of warm) mustAgree(index.search(query, rows.length).found, plainFilter(rows, query).length, query);
  const ours = keystrokes.map((query) => timed(() => index.search(query, 100)).time);
  const plain = keystrokes.map((query) => timed(() => plainFilter(rows, query)).time);
  const [p95, baseline] = [percentile(ours, 0.95), percentile(plain, 0.95)];
  const ratio = p95 / baseline;
  return {
    ratio,
    figure: `p95 ${spellTime(p95)}`,
    baseline: `p95 ${spellTime(baseline)}`,
    ok: p95 <= 16 && ratio <= 1,
    also: {
      'worst keystroke': spellTime(Math.max(...ours)),
      'index of 5,000 types made': spellTime(built.time),
      keystrokes: keystrokes.length,
    },
  };
}

const SYLLABLES = ['or', 'lo', 'cor', 'vid', 'an', 'tes', 'mir', 'quay', 'sol', 'ber', 'dun', 'el'];
const KINDS = ['spot', 'wash', 'beam', 'bar', 'profile', 'fresnel', 'blinder', 'cyc'];

function typeRow(rng: Rng, at: number): SearchedType {
  const word = () => `${rng.pick(SYLLABLES)}${rng.pick(SYLLABLES)}`;
  const modes = Array.from({ length: 1 + rng.int(6) }, () => {
    const slots = 1 + rng.int(60);
    return { name: `${rng.pick(['Basic', 'Extended', 'Pixel', 'Wide'])} channels ${word()}`, footprints: [slots] };
  });
  const model = `${word()} ${at} ${rng.pick(KINDS)}`;
  return { maker: `${word()} ${rng.pick(['works', 'light', 'stage'])}`, model, shortName: model.slice(0, 6), modes };
}

const searchOf = (rng: Rng, rows: readonly SearchedType[]) => {
  const { maker, model } = rng.pick(rows);
  return rng.pick([model, `${maker} ${model}`, `${rng.pick(KINDS)} ${maker}`, 'nothing of the kind']);
};

/** What stands in the field after each letter. */
const typed = (text: string) => Array.from(text, (_, at) => text.slice(0, at + 1));

function plainFilter(rows: readonly SearchedType[], query: string): readonly SearchedType[] {
  const words = query.toLowerCase().split(/\s+/u).filter(Boolean);
  return rows.filter((row) => {
    const text = [row.maker, row.model, row.shortName, ...row.modes.map((mode) => mode.name)].join('\n').toLowerCase();
    return words.every((word) => text.includes(word) || slotsMatch(row, word));
  });
}

const slotsMatch = (row: SearchedType, word: string) =>
  /^\d+$/.test(word) && row.modes.some((mode) => mode.footprints.includes(Number(word)));

function mustAgree(ours: number, theirs: number, query: string): void {
  if (ours !== theirs) throw new Error(`“${query}”: ${ours} found, a plain filter finds ${theirs}`);
}

function timed<T>(work: () => T): { readonly value: T; readonly time: number } {
  const from = performance.now();
  const value = work();
  return { value, time: performance.now() - from };
}
