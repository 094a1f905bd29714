import { CELL_LIMIT } from '../model/field.ts';

/** The longest text of a row's `ranges`, in UTF-16 units; any other cell of a draft holds CELL_LIMIT. */
export const RANGES_LIMIT = 20_000;

/** What a cell has room for: a longer text is cut, and counts as the whole for as long as nobody writes into the cell. */
export const cellText = (text: string, limit: number = CELL_LIMIT): string =>
  text.slice(0, limit).replace(/[\uD800-\uDBFF]$/, '');

/** Text as one line, without white space around it. */
export const oneLine = (text: string): string => text.replace(/\s+/gu, ' ').trim();
