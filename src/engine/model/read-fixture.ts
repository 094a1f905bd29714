import { type Absolute, isAbsolute } from './address.ts';
import { ADDRESS_FIELDS, type CellValue, FIELDS, type Field } from './field.ts';
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
  const refuse = (field: Field, value: CellValue) => {
    if (value !== null && value !== '') unreadable.push(Object.freeze({ field, value }));
    return null;
  };
  const text = (field: Field) => {
    const value = cells[field] ?? '';
    return typeof value === 'number' ? String(value) : value;
  };
  const number = (field: Field, fits: (value: number) => boolean) => {
    const value = cells[field] ?? null;
    return typeof value === 'number' && fits(value) ? value : refuse(field, value);
  };
  const channel = number('channel', (value) => Number.isInteger(value) && value >= 1 && value <= LAST_CHANNEL);
  const addresses = ADDRESS_FIELDS.map((field) => number(field, isAbsolute) as Absolute | null);
  while (addresses.length > 0 && addresses[addresses.length - 1] === null) addresses.pop();
  const order = number('order', Number.isFinite) ?? 0;
  return Object.freeze({
    id,
    order,
    channel,
    position: text('position'),
    unit: text('unit'),
    type: text('type'),
    mode: text('mode'),
    addresses: Object.freeze(addresses),
    purpose: text('purpose'),
    colour: text('colour'),
    circuit: text('circuit'),
    notes: text('notes'),
    unreadable: Object.freeze(unreadable),
  });
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
