/** A word or number of a text: as it stands, as it is looked up, and where it is. */
export interface Word {
  readonly raw: string;
  readonly folded: string;
  readonly from: number;
  readonly to: number;
}

/** The words and numbers of a text, case and accents not counting: `Größe 16bit` reads `grosse`, `16`, `bit`. */
export function wordsOf(text: string): readonly Word[] {
  return [...text.matchAll(/\p{L}[\p{L}\p{M}]*|\d+/gu)].map((match) => ({
    raw: match[0],
    folded: foldWord(match[0]),
    from: match.index,
    to: match.index + match[0].length,
  }));
}

/** A word as it is looked up: lower case, without accents. */
export function foldWord(word: string): string {
  return word
    .toLowerCase()
    .replace(/[ßøæłœđ]/g, (letter) => LETTERS[letter] ?? letter)
    .normalize('NFKD')
    .replace(/\p{M}/gu, '');
}

// Letters that Unicode does not take apart into a base letter and a mark.
const LETTERS: Readonly<Record<string, string>> = { ß: 'ss', ø: 'o', æ: 'ae', ł: 'l', œ: 'oe', đ: 'd' };
