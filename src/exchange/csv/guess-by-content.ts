import type { Meaning } from '#engine/list/meaning.ts';
import type { ColumnFacts } from './column-facts.ts';

type Guess = readonly [column: number, meaning: Meaning];

/**
 * Meanings told from cells alone, for the columns whose headings say nothing (`free`). In a list with headings only what
 * is still missing and plain to see is guessed; in a list without, every column with words ends up somewhere.
 */
export function guessByContent(
  facts: readonly ColumnFacts[],
  given: readonly (Meaning | undefined)[],
  free: readonly boolean[],
  headed: boolean,
): readonly Guess[] {
  const guesses: Guess[] = [];
  const taken = new Set(given.filter((meaning) => meaning !== undefined));
  const open = new Set(
    [...facts.keys()].filter((column) => free[column] && given[column] === undefined && at(facts, column).count > 0),
  );
  const guess = (meaning: Meaning, score: (facts: ColumnFacts, column: number) => number) => {
    if (taken.has(meaning)) return;
    let best = -1;
    let most = 0;
    for (const column of open) {
      const points = score(at(facts, column), column);
      if (points > most) [best, most] = [column, points];
    }
    if (best < 0) return;
    open.delete(best);
    taken.add(meaning);
    guesses.push([best, meaning]);
  };
  guessAddress(facts, guess, taken);
  guess('type', typeScore);
  guess('position', positionScore);
  guess('channel', channelScore);
  guess('unit', unitScore);
  if (headed) return guesses;
  guess('footprint', (column) => (column.footprints > 0.9 && column.whole > 0.9 && column.distinct <= 0.5 ? 1 : 0));
  guess('mode', (column) =>
    column.worded > 0.5 && column.distinct <= 0.6 && column.length <= 24 ? matching(column, MODE_WORDS) : 0,
  );
  guess('colour', (column) => (column.whole < 0.5 ? matching(column, COLOUR_WORDS) : 0));
  for (const column of open) if (at(facts, column).worded > 0.3) guesses.push([column, 'notes']);
  return guesses;
}

function at(facts: readonly ColumnFacts[], column: number): ColumnFacts {
  const found = facts[column];
  if (found === undefined) throw new Error(`no facts of column ${column} of ${facts.length}`);
  return found;
}

type GuessOne = (meaning: Meaning, score: (facts: ColumnFacts, column: number) => number) => void;

/** An address in one column, else a slow column of small numbers beside a fast one of slots. */
function guessAddress(facts: readonly ColumnFacts[], guess: GuessOne, taken: ReadonlySet<Meaning>): void {
  if (taken.has('address') || taken.has('slot') || taken.has('absolute')) return;
  guess('address', (column) => (column.pairs >= 0.7 && column.distinct >= 0.5 ? column.pairs : 0));
  if (taken.has('address')) return;
  const isUniverse = (column: ColumnFacts | undefined) =>
    column !== undefined &&
    column.whole > 0.9 &&
    column.largest <= 256 &&
    column.rising > 0.9 &&
    column.distinct <= 0.34;
  const isSlot = (column: ColumnFacts | undefined) =>
    column !== undefined && column.slots > 0.9 && column.distinct > 0.6 && column.largest > 64;
  for (let i = 0; i + 1 < facts.length; i++) {
    if (!isUniverse(facts[i]) || !isSlot(facts[i + 1])) continue;
    const left = i;
    guess('universe', (_, column) => (column === left ? 1 : 0));
    guess('slot', (_, column) => (column === left + 1 ? 1 : 0));
    return;
  }
}

// Everyday words of the trade, to tell a column of lights from a column of places. Source: common practice.
const TYPE_WORDS =
  /profile|fresnel|wash|spot|\bpar\b|\bpc\b|\bled\b|batten|blinder|strobe|haz|beam|scanner|laser|flood|cyc|moving|head|lantern|scheinwerfer|linse|fluter|nebel|projecteur|d[eé]coupe|plan.convexe|proiettore|sagomatore|recorte|foco|schijnwerper|reflektor|str[aå]lkastare|lyskaster/i;
const POSITION_WORDS =
  /truss|bridge|\bbar\b|\blx\b|\bfoh\b|boom|floor|gallery|balcony|ladder|deck|stage|cove|wing|pipe|electric|\bzug|br[uü]cke|galerie|boden|traverse|b[uü]hne|perche|\bpont\b|passerelle|\bsol\b|porteuse|americana|ponte|\bvara|galleria|\bbrug\b|\btrek\b|zaal|most|sztankiet|rampa|\bbro\b|galleri|gulv|golv|scen/i;
const MODE_WORDS = /mode|basic|ext|std|standard|full|bit|\d\s*ch\b|slot|short|long|direct|pixel|cell|dimmer/i;
const COLOUR_WORDS =
  /^(?:[a-z]{1,3}\s?)?\d{2,4}$|blue|amber|straw|red|green|pink|lavender|blau|rot|gr[uü]n|bleu|rouge|blu|rosso|azul|rojo|chocolate|frost|diffus/i;

const matching = (column: ColumnFacts, words: RegExp) =>
  column.values.filter((value) => words.test(value)).length / Math.max(1, column.count) > 0.3 ? 1 : 0;

function typeScore(column: ColumnFacts): number {
  if (column.worded < 0.7 || column.pairs > 0.5) return 0;
  return matching(column, TYPE_WORDS) * 2 + (matching(column, POSITION_WORDS) ? 0 : 0.1) * (column.length >= 6 ? 1 : 0);
}

function positionScore(column: ColumnFacts): number {
  if (column.worded < 0.7 || column.distinct > 0.7) return 0;
  return matching(column, POSITION_WORDS) * 2 * (1 - column.changes / 2);
}

const channelScore = (column: ColumnFacts) =>
  column.counted > 0.9 && column.distinct > 0.85 && column.rising > 0.8 ? column.distinct : 0;

/** Small numbers, some with a suffix, that go up along each position. */
function unitScore({ values, count, largest, changes, rising }: ColumnFacts): number {
  const numbered = values.filter((value) => /^\d{1,2}\s?\p{L}?$/u.test(value)).length / Math.max(1, count);
  return numbered > 0.9 && largest <= 99 && changes >= 0.5 && rising > 0.5 ? changes : 0;
}
