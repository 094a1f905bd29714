import { foldText } from './fold-text.ts';

/** What of a type is searched. */
export interface SearchedType {
  readonly maker: string;
  readonly model: string;
  readonly shortName: string;
  readonly modes: readonly { readonly name: string; readonly footprints: readonly number[] }[];
}

interface FoundTypes<Row> {
  /** The best first, at most as many as asked for. */
  readonly rows: readonly Row[];
  /** How many there are altogether. */
  readonly found: number;
}

export interface TypeIndex<Row> {
  /**
   * The types in which every word of `query` stands somewhere in the maker, the model, the short name or the name of a
   * mode, without regard to case and accents. A number is also found as the slots of a mode (of one break, or of all), and
   * `12 slots` only so unless it stands there in words. First those whose model or short name is the query, then those
   * whose model starts with it, then those whose maker does, then the rest, each in the order of the rows.
   */
  search(query: string, limit: number): FoundTypes<Row>;
}

/** Made once per list of types: a search then only looks at texts that are ready. */
export function createTypeIndex<Row extends SearchedType>(rows: readonly Row[]): TypeIndex<Row> {
  const entries = rows.map(entryOf);
  return {
    search(query, limit) {
      const whole = foldText(query);
      const words = wordsOf(whole);
      const ranked: Row[][] = RANKS.map(() => []);
      let found = 0;
      for (const entry of entries) {
        if (!words.every((word) => matches(entry, word))) continue;
        found += 1;
        const rank = ranked[rankOf(entry, whole)];
        if (rank !== undefined && rank.length < limit) rank.push(entry.row);
      }
      return { rows: ranked.flat().slice(0, limit), found };
    },
  };
}

interface Entry<Row> {
  readonly row: Row;
  readonly model: string;
  readonly shortName: string;
  /** Maker and model, as one says them. */
  readonly name: string;
  /** Everything that is searched, one field a line, so that no word spans two. */
  readonly text: string;
  readonly slots: ReadonlySet<number>;
}

function entryOf<Row extends SearchedType>(row: Row): Entry<Row> {
  const maker = foldText(row.maker);
  const model = foldText(row.model);
  const shortName = foldText(row.shortName);
  const modes = row.modes.map(({ name }) => foldText(name));
  return {
    row,
    model,
    shortName,
    name: `${maker} ${model}`,
    text: [maker, model, shortName, ...modes].join('\n'),
    slots: new Set(row.modes.flatMap(({ footprints }) => [...footprints, sum(footprints)])),
  };
}

const sum = (numbers: readonly number[]) => numbers.reduce((total, each) => total + each, 0);

/** A word of a query; `slots` when it may also be a number of slots. */
interface Word {
  readonly text: string;
  readonly slots: number | null;
  /** `slot` or `slots` behind a number: holds for whatever has that many, too. */
  readonly unitOf: number | null;
}

const NUMBER = /^\d{1,4}$/;

function wordsOf(folded: string): readonly Word[] {
  const texts = folded === '' ? [] : folded.split(' ');
  const isUnit = (text: string | undefined) => text === 'slot' || text === 'slots';
  const number = (text: string | undefined) => (text !== undefined && NUMBER.test(text) ? Number(text) : null);
  return texts.map((text, at) => ({
    text: isUnit(texts[at + 1]) && number(text) !== null ? `${text} ${texts[at + 1]}` : text,
    slots: number(text),
    unitOf: isUnit(text) ? number(texts[at - 1]) : null,
  }));
}

function matches(entry: Entry<unknown>, { text, slots, unitOf }: Word): boolean {
  if (entry.text.includes(text)) return true;
  return (slots !== null && entry.slots.has(slots)) || (unitOf !== null && entry.slots.has(unitOf));
}

const RANKS = ['model', 'start of model', 'start of maker', 'rest'] as const;

function rankOf({ model, shortName, name }: Entry<unknown>, query: string): number {
  if (query === '') return 0;
  if (model === query || shortName === query || name === query) return 0;
  if (model.startsWith(query)) return 1;
  return name.startsWith(query) ? 2 : 3;
}
