import { formatAddress } from '#engine/address/notation.ts';
import { isAbsolute } from '#engine/model/address.ts';
import { ADDRESS_FIELDS, type Field } from '#engine/model/field.ts';
import type { Fixture } from '#engine/model/fixture.ts';
import { cellOf } from '#engine/model/read-fixture.ts';
import type { Rig } from '#engine/model/rig.ts';
import type { ColumnId } from './column.ts';
import { footprintOf } from './compare-rows.ts';

/** What stands in a cell of the sheet, as a person reads it; empty text when nothing does. */
export function cellText(rig: Rig, fixture: Fixture, column: ColumnId): string {
  if (column === 'footprint') return String(footprintOf(rig, fixture));
  const value = cellOf(fixture, column);
  if (value === null) return '';
  if (typeof value === 'number' && isAddressField(column) && isAbsolute(value)) return formatAddress(value);
  return String(value);
}

const isAddressField = (field: Field) => (ADDRESS_FIELDS as readonly Field[]).includes(field);
