import { trimEnd } from '#base/trim-end.ts';
import { type Word, wordsOf } from './fold-words.ts';

export interface ByteWords {
  /**
   * Which byte of a value a name speaks of: `all` says coarse and fine at once; `wide` says 16 bit, which some manuals put
   * on the coarse row and some on the fine one.
   */
  readonly bytes: 'none' | 'coarse' | 'fine' | 'ultra' | 'all' | 'wide' | 'wider';
  /** The text without them. */
  readonly name: string;
}

// From memory: English, German, French, Spanish, Italian.
const COARSE: ReadonlySet<string> = new Set('coarse msb grob grossier grueso grosso'.split(' '));
const FINE: ReadonlySet<string> = new Set('fine lsb fein fin fino'.split(' '));
const ULTRA: ReadonlySet<string> = new Set('ultra ultrafine ultrafein'.split(' '));
const BITS: Readonly<Record<string, 'none' | 'wide' | 'wider'>> = { 8: 'none', 16: 'wide', 24: 'wider', 32: 'wider' };

/** Takes what a name says of bytes out of it: `Pan (coarse/fine)`, `Tilt 16-bit`, `Zoom LSB`. */
export function readByteWords(text: string): ByteWords {
  const words = wordsOf(text);
  const taken: Word[] = [];
  const said = new Set<ByteWords['bytes']>();
  words.forEach((word, at) => {
    const next = words[at + 1];
    const bits = next?.folded === 'bit' || next?.folded === 'bits' ? BITS[word.folded] : undefined;
    if (bits !== undefined && next !== undefined) {
      taken.push(word, next);
      said.add(bits);
    } else if (next?.folded === 'byte' && (word.folded === 'high' || word.folded === 'low')) {
      taken.push(word, next);
      said.add(word.folded === 'high' ? 'coarse' : 'fine');
    } else {
      const one = byteWord(word.folded);
      if (one !== undefined) {
        taken.push(word);
        said.add(one);
      }
    }
  });
  return taken.length === 0
    ? { bytes: 'none', name: text.trim() }
    : { bytes: together(said), name: without(text, taken) };
}

function byteWord(folded: string): ByteWords['bytes'] | undefined {
  if (COARSE.has(folded)) return 'coarse';
  if (FINE.has(folded)) return 'fine';
  return ULTRA.has(folded) ? 'ultra' : undefined;
}

function together(said: ReadonlySet<ByteWords['bytes']>): ByteWords['bytes'] {
  if (said.has('coarse') && said.has('fine')) return 'all';
  const order = ['ultra', 'fine', 'coarse', 'wider', 'wide'] as const;
  return order.find((each) => said.has(each)) ?? 'none';
}

function without(text: string, taken: readonly Word[]): string {
  let rest = '';
  let from = 0;
  for (const word of taken) {
    rest += text.slice(from, word.from);
    from = word.to;
  }
  rest += text.slice(from);
  const single = rest
    .replace(/[([][\s/,+&-]*[)\]]/g, ' ')
    .replace(/\s+/g, ' ')
    .replace(/^[\s/,+&:-]+/, '');
  return trimEnd(single, ' /,+&:(-').replace(/ ?[/+&-] ?[/+&-] ?/g, ' / ');
}
