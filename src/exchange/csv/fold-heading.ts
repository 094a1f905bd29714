/**
 * A heading as it is looked up: case, accents, punctuation and white space do not count, `#` does. `Nº`, `N°` and `No.`
 * all read `no` or `n`.
 */
export function foldHeading(text: string): string {
  return text
    .toLowerCase()
    .replace(/[ßøæłœđ]/g, (letter) => LETTERS[letter] ?? letter)
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replace(/[^\p{L}\p{N}#]+/gu, ' ')
    .trim();
}

// Letters that Unicode does not take apart into a base letter and a mark.
const LETTERS: Readonly<Record<string, string>> = { ß: 'ss', ø: 'o', æ: 'ae', ł: 'l', œ: 'oe', đ: 'd' };
