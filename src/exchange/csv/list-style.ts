import type { GridRow } from '#engine/list/grid.ts';
import type { LayoutColumn } from '#engine/list/layout.ts';
import type { Meaning } from '#engine/list/meaning.ts';
import { isBackwardRange, rangeEnds } from './counting.ts';
import { type AddressStyle, addressStyle } from './list-address.ts';
import { readWhole } from './read-number.ts';

/** How a list writes things, told from all its fixture lines together. */
export interface ListStyle {
  /** By column. */
  readonly addresses: ReadonlyMap<number, AddressStyle>;
  /** Whether `21-26` as a unit counts six units: not when dashes only name them (`1-1`, `1-2`, `2-1`). */
  readonly unitRanges: boolean;
  readonly channelRanges: boolean;
  /** Whether `Spot x4` counts four: not when the lines below number on by one, and `x4` is part of the name. */
  readonly quantityBehindType: boolean;
}

export function listStyle(rows: readonly GridRow[], columns: readonly LayoutColumn[]): ListStyle {
  const cellsOf = (column: number) => rows.map((row) => (row.cells[column] ?? '').trim());
  const ofMeaning = (meaning: Meaning) => columns.findIndex((column) => column.meaning === meaning);
  const addresses = new Map<number, AddressStyle>();
  for (const [index, { meaning }] of columns.entries()) {
    if (ADDRESSED.has(meaning)) addresses.set(index, addressStyle(cellsOf(index)));
  }
  const units = cellsOf(ofMeaning('unit'));
  const channels = cellsOf(ofMeaning('channel'));
  return {
    addresses,
    unitRanges: dashesCount(units),
    channelRanges: dashesCount(channels),
    quantityBehindType:
      countsBehind(cellsOf(ofMeaning('type')), units) && countsBehind(cellsOf(ofMeaning('type')), channels),
  };
}

const ADDRESSED = new Set<Meaning>(['address', 'address2', 'address3', 'address4', 'absolute', 'slot']);

/** Dashes count when every dashed cell runs upwards and none begins inside the one right above it. */
function dashesCount(cells: readonly string[]): boolean {
  if (cells.some(isBackwardRange)) return false;
  const ranges = cells.map(rangeEnds);
  return !ranges.some((range, i) => {
    const above = ranges[i - 1];
    return range !== undefined && above !== undefined && range.prefix === above.prefix && range.first === above.first;
  });
}

function countsBehind(types: readonly string[], numbers: readonly string[]): boolean {
  return !types.some((type, i) => {
    const here = readWhole(numbers[i] ?? '');
    const next = readWhole(numbers[i + 1] ?? '');
    return /[x×]\s?[2-9]\d{0,2}\)?$/u.test(type) && here !== undefined && next === here + 1;
  });
}
