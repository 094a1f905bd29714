/**
 * A text as people who search mean it: without case and accents, runs of white space as one space. Letters that are one
 * with their accent in Unicode are spelled out: `Ø` is found by `o`, `ß` by `ss`.
 */
export function foldText(text: string): string {
  return text
    .normalize('NFKD')
    .replace(/\p{M}+/gu, '')
    .toLowerCase()
    .replace(/[ßøæœłđðþı]/gu, (letter) => SPELLED[letter] ?? letter)
    .replace(/\s+/gu, ' ')
    .trim();
}

const SPELLED: Readonly<Record<string, string>> = {
  ß: 'ss',
  ø: 'o',
  æ: 'ae',
  œ: 'oe',
  ł: 'l',
  đ: 'd',
  ð: 'd',
  þ: 'th',
  ı: 'i',
};
