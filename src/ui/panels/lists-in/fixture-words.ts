import { formatAddress } from '#engine/address/notation.ts';
import { isAbsolute } from '#engine/model/address.ts';
import { ADDRESS_FIELDS, type CellValue } from '#engine/model/field.ts';
import type { Cells } from '#engine/model/fixture.ts';

/** A fixture of the list as a person reads it. */
export interface FixtureWords {
  readonly channel: string;
  readonly position: string;
  readonly unit: string;
  readonly type: string;
  readonly mode: string;
  /** The start address of each break that has one. */
  readonly address: string;
  /** Purpose, colour, circuit and notes. */
  readonly rest: string;
}

export function fixtureWords(cells: Cells): FixtureWords {
  const rest = [cells.purpose, cells.colour, cells.circuit, cells.notes].map(say).filter(Boolean);
  const addresses = ADDRESS_FIELDS.map((field) => sayAddress(cells[field])).filter(Boolean);
  return {
    channel: say(cells.channel),
    position: say(cells.position),
    unit: say(cells.unit),
    type: say(cells.type),
    mode: say(cells.mode),
    address: addresses.join(' '),
    rest: rest.join(' · '),
  };
}

const say = (value: CellValue | undefined) => String(value ?? '');

/** Text in an address cell is what could not be read, and is shown as it stands. */
const sayAddress = (value: CellValue | undefined) =>
  typeof value === 'number' && isAbsolute(value) ? formatAddress(value) : say(value);
