import { LIST_LIMITS } from './limits.ts';

const DASH = '(?:-|–|—|\\.\\.+|to|thru|bis|tot|till|til|do|al|à|a)';
const RANGE = new RegExp(`^(\\D*?)(\\d{1,6})\\s*${DASH}\\s*(\\D*?)(\\d{1,6})$`, 'iu');

/** The two ends of a range: `21-26`, `A1 - A6`, `A1-6`, `21 bis 26`. Undefined when the text is none, or runs backwards. */
export function rangeEnds(
  text: string,
): { readonly prefix: string; readonly first: number; readonly last: number } | undefined {
  const match = RANGE.exec(text.trim());
  if (!match) return undefined;
  const [prefix = '', first = '', again = '', last = ''] = match.slice(1);
  if (again !== '' && again.trim() !== prefix.trim()) return undefined;
  return Number(last) > Number(first) ? { prefix, first: Number(first), last: Number(last) } : undefined;
}

/** A text with a dash that would be a range if it ran upwards: `2-1`, `3-3`. It tells that dashes here name things. */
export function isBackwardRange(text: string): boolean {
  const match = RANGE.exec(text.trim());
  return match !== null && Number(match[4]) <= Number(match[2]);
}

/**
 * The names that a cell stands for: `21-26` six, `1+3+5` and `1, 3, 5` three, `1-3, 5` four, `4A` itself. Undefined when it
 * stands for more than a line may.
 */
export function countNames(text: string): readonly string[] | undefined {
  const parts = text.split(/\s*[,+&]\s*/);
  const plural =
    parts.length > 1 && parts.every((part) => /^\D{0,3}\d{1,6}$/.test(part) || rangeEnds(part) !== undefined);
  const names: string[] = [];
  for (const part of plural ? parts : [text]) {
    const range = rangeEnds(part);
    if (range === undefined) names.push(part);
    else if (range.last - range.first >= LIST_LIMITS.perLine) return undefined;
    else for (let n = range.first; n <= range.last; n++) names.push(`${range.prefix}${n}`);
    if (names.length > LIST_LIMITS.perLine) return undefined;
  }
  return names;
}

/** The name `steps` further on: `4` to `5`, `A09` to `A10`. Undefined when it does not end in a number. */
export function countOn(name: string, steps: number): string | undefined {
  const match = /^(.*?)(\d{1,9})$/s.exec(name);
  if (!match) return undefined;
  const [, prefix = '', digits = ''] = match;
  return prefix + String(Number(digits) + steps).padStart(digits.length, '0');
}
