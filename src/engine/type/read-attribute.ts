import type { AttributeGuess } from '../draft/chart-reading.ts';
import {
  ATTRIBUTE_RULES,
  type AttributeRule,
  COLOUR_LETTERS,
  isFiller,
  isPartWord,
  WORD_MEANINGS,
} from './attribute-words.ts';
import { attributeFacts } from './attributes.ts';
import { type ByteWords, readByteWords } from './byte-words.ts';
import { foldWord, type Word, wordsOf } from './fold-words.ts';

export interface ReadAttribute {
  /** Of the standard; the name itself when `guess` is unknown. */
  readonly attribute: string;
  readonly guess: AttributeGuess;
  /** The part it is about, such as `Pixel 3` or `2`; empty: none is named. */
  readonly part: string;
  /** What the name says of bytes: `Pan fine` is a fine byte. */
  readonly bytes: ByteWords['bytes'];
  /** The name without words about bytes. */
  readonly name: string;
  /** Names that differ only in case, accents and words about bytes have the same. */
  readonly key: string;
}

/** The attribute that a channel's name in a manual means, and how sure that is. */
export function readAttribute(text: string): ReadAttribute {
  const { bytes, name } = readByteWords(text);
  const words = wordsOf(name);
  const key = words.map((word) => word.folded).join(' ');
  const named = namesItself(name);
  if (named !== undefined) return { attribute: named, guess: 'stated', part: '', bytes, name, key };
  return { ...byWords(name, words), bytes, name, key };
}

/** Written as only the standard writes: `ColorAdd_R`, `PanRotate`. */
function namesItself(name: string): string | undefined {
  const odd = name.includes('_') || /[a-z][A-Z]/.test(name);
  return odd && attributeFacts(name) !== undefined ? name : undefined;
}

function byWords(name: string, words: readonly Word[]): Pick<ReadAttribute, 'attribute' | 'guess' | 'part'> {
  const letter = words.length === 1 ? COLOUR_LETTERS[words[0]?.raw ?? ''] : undefined;
  if (letter !== undefined) return { ...byWords(letter, wordsOf(letter)), guess: 'likely' };
  const { numbers, part, rest } = takeNumbers(words);
  const meanings = new Map(rest.map((word) => [word, meaningsOf(word, rest)]));
  const there = new Set([...meanings.values()].flat());
  const rule = ATTRIBUTE_RULES.find((each) => each.words.every((word) => there.has(word)));
  if (rule === undefined || rule.attribute === '') return { attribute: name, guess: 'unknown', part };
  const counted = rule.attribute.includes('#');
  const counter = counted ? (numbers[0] ?? '1') : '';
  const used = counted || part !== '' ? 1 : 0;
  const clear = !rule.doubt && numbers.length <= 1 && rest.every((word) => fits(word, meanings.get(word) ?? [], rule));
  return {
    attribute: rule.attribute.replace('#', counter),
    guess: clear ? 'sure' : 'likely',
    part: used === 0 ? (numbers[0] ?? '') : part,
  };
}

/** `Gobo rot` turns, `Rot` is red. */
function meaningsOf(word: Word, all: readonly Word[]): readonly string[] {
  if (word.folded !== 'rot') return WORD_MEANINGS.get(word.folded) ?? [];
  return all.some((other) => TURNING.has(other.folded)) ? ['rotation'] : ['red'];
}

const TURNING: ReadonlySet<string> = new Set(['gobo', 'prism', 'blade', 'animation', 'shaper', 'pan', 'tilt']);

/** Whether a word of the name agrees with the rule, or says nothing. */
const fits = (word: Word, meanings: readonly string[], rule: AttributeRule) =>
  isFiller(word.folded) ||
  (meanings.length > 0 && meanings.every((meaning) => rule.words.includes(meaning) || isEcho(meaning, rule)));

// `Master dimmer`, `Colour red`, `Fan speed`, `Fog control` say one thing twice.
const ECHOES: Readonly<Record<string, RegExp>> = {
  master: /^Dimmer$/,
  dimmer: /^Dimmer$/,
  color: /^(Color|CT|Tint)/,
  speed: /^Fan/,
  wheel: /^(Gobo|Color|Animation)/,
  effect: /^Prism/,
  function: /^(NoFeature|Function)/,
};

const isEcho = (meaning: string, rule: AttributeRule) => ECHOES[meaning]?.test(rule.attribute) === true;

/** Numbers beside a word for a part name the part; the others count. */
function takeNumbers(words: readonly Word[]) {
  const at = words.findIndex(
    (word, index) => isPartWord(word.folded) && isNumber(words[index + 1] ?? words[index - 1]),
  );
  const word = words[at];
  if (word === undefined) return { numbers: words.filter(isNumber).map(plain), part: '', rest: words.filter(isWord) };
  const number = [words[at + 1], words[at - 1]].find(isNumber);
  const others = words.filter((each) => each !== word && each !== number);
  const part = number === undefined ? '' : `${capital(word.raw)} ${plain(number)}`;
  return { numbers: others.filter(isNumber).map(plain), part, rest: others.filter(isWord) };
}

const isNumber = (word: Word | undefined): word is Word => word !== undefined && /^\d{1,3}$/.test(word.folded);
const isWord = (word: Word) => !isNumber(word);
const plain = (word: Word) => String(Number(word.folded));
const capital = (raw: string) => raw.charAt(0).toUpperCase() + raw.slice(1).toLowerCase();

/** Whether a text begins with a word that means flashing, and in which way; null when it does not. */
export function flashesIn(text: string): 'Strobe' | 'StrobePulse' | 'StrobeRandom' | null {
  const means = wordsOf(text)
    .slice(0, 3)
    .map(({ folded }) => WORD_MEANINGS.get(foldWord(folded))?.[0] ?? '');
  const at = means.indexOf('strobe');
  if (at < 0 || means.includes('no') || (at > 0 && means[0] !== 'random' && means[0] !== 'pulse')) return null;
  if (means.includes('random')) return 'StrobeRandom';
  return means.includes('pulse') ? 'StrobePulse' : 'Strobe';
}
