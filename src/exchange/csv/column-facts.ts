import { type AddressStyle, addressStyle, placeAddress, readListAddress } from './list-address.ts';
import { isBlankMark, readFootprint, readQuantity, readWhole } from './read-number.ts';

/** What the cells of a column look like, whatever its heading says. Shares are of the cells that hold something, 0 to 1. */
export interface ColumnFacts {
  readonly values: readonly string[];
  readonly count: number;
  /** Different values for each filled cell. */
  readonly distinct: number;
  /** Times the value changes from one filled cell to the next, for each filled cell. */
  readonly changes: number;
  readonly whole: number;
  readonly largest: number;
  /** Whole numbers that are not below the one before them. */
  readonly rising: number;
  /** Universe and slot in one cell. */
  readonly pairs: number;
  readonly slots: number;
  readonly footprints: number;
  readonly quantities: number;
  /** Whole numbers and ranges or lists of them. */
  readonly counted: number;
  /** Cells with a letter. */
  readonly worded: number;
  readonly length: number;
}

export function columnFacts(cells: readonly string[]): ColumnFacts {
  const values = cells.map((cell) => cell.trim()).filter((cell) => !isBlankMark(cell));
  const style = addressStyle(values);
  const share = (fits: (value: string) => boolean) => values.filter(fits).length / Math.max(1, values.length);
  const numbers = values.map(readWhole).filter((value): value is number => value !== undefined);
  const rising = numbers.filter((value, i) => value >= (numbers[i - 1] ?? 0)).length;
  return {
    values,
    count: values.length,
    distinct: new Set(values).size / Math.max(1, values.length),
    changes: values.filter((value, i) => i > 0 && value !== values[i - 1]).length / Math.max(1, values.length),
    whole: numbers.length / Math.max(1, values.length),
    largest: numbers.reduce((most, value) => Math.max(most, value), 0),
    rising: rising / Math.max(1, numbers.length),
    pairs: share((value) => isPair(value, style)),
    slots: share((value) => inRange(readWhole(value), 1, 512)),
    footprints: share((value) => readFootprint(value) !== undefined),
    quantities: share((value) => inRange(readQuantity(value), 1, 1000)),
    counted: share((value) => /^\d{1,6}(?:\s*(?:[-–,+&]|\.\.|to|bis|thru|à|al?|tot|do|till?)\s*\d{1,6})*$/.test(value)),
    worded: share((value) => /\p{L}/u.test(value)),
    length: values.reduce((sum, value) => sum + value.length, 0) / Math.max(1, values.length),
  };
}

const inRange = (value: number | undefined, low: number, high: number) =>
  value !== undefined && value >= low && value <= high;

function isPair(value: string, style: AddressStyle): boolean {
  const address = readListAddress(value, style);
  return (
    address !== undefined && address.universe !== null && placeAddress(address.universe, address.number) !== undefined
  );
}
