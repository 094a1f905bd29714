import { type Absolute, isAbsolute } from './address.ts';
import { ADDRESS_FIELDS, type AddressField, type CellValue, FIELDS, type Field } from './field.ts';
import type { Cells, Fixture, UnreadableCell } from './fixture.ts';
import type { FixtureId } from './ids.ts';

export const LAST_CHANNEL = 999_999;

/**
 * Makes a fixture of stored cells. Total: what a field cannot mean is kept in `unreadable`, as it stands, and the field
 * reads as empty. Numbers are stored as numbers; text in `channel` or an address is something a person typed that
 * could not be read, and stays so until it is corrected.
 */
export function readFixture(id: FixtureId, cells: Cells): Fixture {
  const unreadable: UnreadableCell[] = [];
  const channel = readNumber(cells, 'channel', isChannel, unreadable);
  const addresses = readAddresses(cells, unreadable);
  const order = readNumber(cells, 'order', Number.isFinite, unreadable) ?? 0;
  return Object.freeze({
    id,
    order,
    channel,
    position: readText(cells.position),
    unit: readText(cells.unit),
    type: readText(cells.type),
    mode: readText(cells.mode),
    addresses,
    purpose: readText(cells.purpose),
    colour: readText(cells.colour),
    circuit: readText(cells.circuit),
    notes: readText(cells.notes),
    firmware: readText(cells.firmware),
    run: readText(cells.run),
    along: readNumber(cells, 'along', Number.isFinite, unreadable) ?? 0,
    cable: readNumber(cells, 'cable', isCable, unreadable),
    lock: readText(cells.lock),
    unreadable: unreadable.length === 0 ? NONE : Object.freeze(unreadable),
  });
}

// One empty list for all rows: tens of thousands of them are read at a time.
const NONE: readonly never[] = Object.freeze([]);

/** Metres of cable from one unit to the next, at most: far more than a line may have. */
const LONGEST_CABLE = 10_000;

const isCable = (value: number) => value > 0 && value <= LONGEST_CABLE;

const isChannel = (value: number) => Number.isInteger(value) && value >= 1 && value <= LAST_CHANNEL;

const readText = (value: CellValue | undefined) => (typeof value === 'number' ? String(value) : (value ?? ''));

function readNumber(cells: Cells, field: Field, fits: (value: number) => boolean, unreadable: UnreadableCell[]) {
  const value = cells[field] ?? null;
  if (typeof value === 'number' && fits(value)) return value;
  if (value !== null && value !== '') unreadable.push(Object.freeze({ field, value }));
  return null;
}

function readAddresses(cells: Cells, unreadable: UnreadableCell[]): readonly (Absolute | null)[] {
  const read = (field: AddressField) => readNumber(cells, field, isAbsolute, unreadable) as Absolute | null;
  const first = read('address');
  const others = [read('address2'), read('address3'), read('address4')];
  const last = others.findLastIndex((address) => address !== null);
  // Nearly all rows have one address: a list that never grew takes no room for more.
  if (last < 0) return first === null ? NONE : Object.freeze([first]);
  return Object.freeze([first, ...others.slice(0, last + 1)]);
}

/** What one cell of a fixture holds, as stored: the inverse of `readFixture`. */
export function cellOf(fixture: Fixture, field: Field): CellValue {
  for (const cell of fixture.unreadable) if (cell.field === field) return cell.value;
  const part = (ADDRESS_FIELDS as readonly Field[]).indexOf(field);
  if (part >= 0) return fixture.addresses[part] ?? null;
  const value = fixture[field as Exclude<Field, (typeof ADDRESS_FIELDS)[number]>];
  return value === '' ? null : value;
}

/** All cells of a fixture that hold something. `readFixture(fixture.id, cellsOf(fixture))` equals `fixture`. */
export function cellsOf(fixture: Fixture): Cells {
  const cells: Partial<Record<Field, CellValue>> = {};
  for (const field of FIELDS) {
    const value = cellOf(fixture, field);
    if (value !== null) cells[field] = value;
  }
  return cells;
}
