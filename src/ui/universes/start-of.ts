import type { Absolute } from '#engine/model/address.ts';
import { ADDRESS_FIELDS } from '#engine/model/field.ts';
import type { Fixture } from '#engine/model/fixture.ts';

/** The start address a cell of a row speaks of: that of its break, or else the first one the unit has. */
export function startOf(fixture: Fixture, column: string | undefined): Absolute | null {
  const part = (ADDRESS_FIELDS as readonly string[]).indexOf(column ?? '');
  return fixture.addresses[part] ?? fixture.addresses.find((address) => address !== null) ?? null;
}
