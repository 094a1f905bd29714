import type { LayoutColumn, Reason } from '#engine/list/layout.ts';
import type { Meaning } from '#engine/list/meaning.ts';
import type { ColumnFacts } from './column-facts.ts';
import { foldHeading } from './fold-heading.ts';
import { guessByContent } from './guess-by-content.ts';
import { hintsOf } from './heading-words.ts';
import { suits } from './suits.ts';

interface Offer {
  readonly column: number;
  readonly meaning: Meaning;
  readonly score: number;
}

/**
 * The meaning of each column: what its heading allows, weighed by what its cells look like, each meaning given once; what
 * no heading tells, from the cells alone. The person has the last word.
 */
export function guessMeanings(headings: readonly string[], facts: readonly ColumnFacts[]): readonly LayoutColumn[] {
  const meanings: (Meaning | undefined)[] = headings.map(() => undefined);
  const reasons: Reason[] = headings.map(() => 'nothing');
  const give = (column: number, meaning: Meaning, reason: Reason) => {
    meanings[column] = meaning;
    reasons[column] = reason;
  };
  for (const { column, meaning } of bestFirst(offers(headings, facts))) {
    if (meanings[column] !== undefined) continue;
    if (meanings.includes(meaning) && !mayJoin(meaning, headings, meanings, column)) continue;
    give(column, meaning, 'heading');
  }
  nameSlots(meanings, facts);
  const headed = headings.some((heading) => heading !== '');
  for (const [column, meaning] of guessByContent(facts, meanings, unknown(headings, facts), headed)) {
    give(column, meaning, 'content');
  }
  return headings.map((heading, column) => ({
    heading,
    meaning: meanings[column] ?? 'ignore',
    because: reasons[column] ?? 'nothing',
  }));
}

function offers(headings: readonly string[], facts: readonly ColumnFacts[]): Offer[] {
  return headings.flatMap((heading, column) => {
    const hints = isDeskCircuit(heading, headings, facts[column]) ? CHANNEL_FIRST : hintsOf(heading);
    return hints.map(({ meaning, weight }) => ({ column, meaning, score: weight * suits(meaning, facts[column]) }));
  });
}

// Words that only touch a meaning, over cells that cannot have it, say nothing.
const LEAST = 0.43;

const bestFirst = (all: readonly Offer[]) =>
  all.filter(({ score }) => score > LEAST).sort((a, b) => b.score - a.score || a.column - b.column);

/** Columns of whose meaning the headings say nothing that their cells bear out. */
function unknown(headings: readonly string[], facts: readonly ColumnFacts[]): readonly boolean[] {
  const told = new Set(bestFirst(offers(headings, facts)).map(({ column }) => column));
  return headings.map((_, column) => !told.has(column));
}

const CHANNEL_FIRST = [{ meaning: 'channel', weight: 3 }] as const;
const FRENCH = new Set([
  'projecteur',
  'projecteurs',
  'appareil',
  'gelatine',
  'filtre',
  'gradateur',
  'perche',
  'porteuse',
  'univers',
]);

const DESK_CIRCUITS = new Set(['kreis', 'stellkreis', 'kring']);

/**
 * `Circuit` in a French list, `Kreis` and `Kring` are the desk's number, unless another column is the channel. Source:
 * common practice.
 */
function isDeskCircuit(heading: string, headings: readonly string[], facts: ColumnFacts | undefined): boolean {
  const folded = foldHeading(heading);
  if (facts === undefined || facts.whole < 0.6) return false;
  const french = folded === 'circuit' && headings.some((each) => FRENCH.has(foldHeading(each)));
  if (!french && !DESK_CIRCUITS.has(folded)) return false;
  return !headings.some((each) => hintsOf(each).some(({ meaning, weight }) => meaning === 'channel' && weight >= 2));
}

const MAKERS = new Set(
  (
    'make manufacturer brand hersteller fabrikat marque fabricant marca fabricante produttore merk fabrikant producent ' +
    'tillverkare produsent'
  ).split(' '),
);

/** Several columns of notes are joined; maker and model together are the type. */
function mayJoin(
  meaning: Meaning,
  headings: readonly string[],
  meanings: readonly (Meaning | undefined)[],
  column: number,
): boolean {
  if (meaning === 'notes') return true;
  if (meaning !== 'type') return false;
  const together = headings.filter((_, i) => i === column || meanings[i] === 'type').map(foldHeading);
  return together.length === 2 && together.filter((heading) => MAKERS.has(heading)).length === 1;
}

/** Beside a universe, a column of plain numbers up to 512 is the slot; without one, a slot column is the whole address. */
function nameSlots(meanings: (Meaning | undefined)[], facts: readonly ColumnFacts[]): void {
  const address = meanings.indexOf('address');
  const slot = meanings.indexOf('slot');
  const universe = meanings.includes('universe');
  if (address >= 0 && slot < 0 && universe && (facts[address]?.slots ?? 0) > 0.5) meanings[address] = 'slot';
  if (slot >= 0 && address < 0 && !universe) meanings[slot] = 'address';
}
