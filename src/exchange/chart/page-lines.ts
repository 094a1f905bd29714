import type { SplitLine } from './split-lines.ts';

/** Tells what belongs to the pages of a manual and not to its chart. */
export interface PageLines {
  /** A page number, or a line that comes again with only its numbers changed. */
  isPage(line: SplitLine): boolean;
  /** Comes again word by word. */
  comesAgain(line: SplitLine): boolean;
}

const PAGE =
  /^\W{0,4}(?:(?:page|seite|pagina|página|p\.|s\.)\s?\d{1,4}(?:\s?(?:\/|of|von|de|di|sur)\s?\d{1,4})?|\d{1,4}\s?(?:\/|of|von|sur)\s?\d{1,4}|[-–—]\s?\d{1,4}\s?[-–—])\W{0,4}$/i;

export function pageLines(lines: readonly SplitLine[]): PageLines {
  const seen = new Map<string, { readonly text: string; times: number; differs: boolean }>();
  for (const { text } of lines) {
    const key = withoutNumbers(text);
    const entry = seen.get(key);
    if (entry === undefined) seen.set(key, { text, times: 1, differs: false });
    else {
      entry.times += 1;
      entry.differs = entry.differs || entry.text !== text;
    }
  }
  const entryOf = (line: SplitLine) => seen.get(withoutNumbers(line.text));
  return {
    isPage: (line) => isPageNumber(line.text) || (entryOf(line)?.differs === true && /\p{L}{3}/u.test(line.text)),
    comesAgain: (line) => (entryOf(line)?.times ?? 0) > 1,
  };
}

/** `Page 3`, `3 / 12`, `- 3 -`. */
export const isPageNumber = (text: string) => PAGE.test(text);

const withoutNumbers = (text: string) => text.replace(/\d+/g, '0');
