import { slotOf, universeOf } from '../model/address.ts';
import { formatCell } from '../model/cell-text.ts';
import { ADDRESS_FIELDS, type Field } from '../model/field.ts';
import { modeOf } from '../model/find-mode.ts';
import type { Fixture } from '../model/fixture.ts';
import type { Rig } from '../model/rig.ts';
import { formatFootprints, PATCH_COLUMNS, type PatchColumn } from './patch-format.ts';
import type { SheetCell } from './sheet.ts';

const BREAK_COLUMNS = [
  ['universe', 'slot'],
  ['universe2', 'slot2'],
  ['universe3', 'slot3'],
  ['universe4', 'slot4'],
] as const satisfies readonly (readonly [PatchColumn, PatchColumn])[];

/** The columns a rig's fixtures need: breaks 2 to 4 only up to the last that any fixture has something in, and those of the seldom columns in which anything stands. */
export function columnsFor(
  fixtures: readonly Fixture[],
  wanted: readonly PatchColumn[] = PATCH_COLUMNS,
): readonly PatchColumn[] {
  let breaks = 1;
  for (const fixture of fixtures) breaks = Math.max(breaks, fixture.addresses.length, unreadableBreaks(fixture));
  const unused = new Set<PatchColumn>(BREAK_COLUMNS.slice(breaks).flat());
  for (const column of SELDOM) if (!fixtures.some((fixture) => hasCell(fixture, column))) unused.add(column);
  return wanted.filter((column) => !unused.has(column));
}

const SELDOM = ['firmware', 'run', 'along', 'cable', 'lock'] as const satisfies readonly PatchColumn[];

function hasCell(fixture: Fixture, column: (typeof SELDOM)[number]): boolean {
  const value = fixture[column];
  return (value !== '' && value !== null && value !== 0) || unreadableCell(fixture, column) !== null;
}

function unreadableBreaks(fixture: Fixture): number {
  return fixture.unreadable.reduce(
    (most, { field }) => Math.max(most, (ADDRESS_FIELDS as readonly Field[]).indexOf(field) + 1),
    0,
  );
}

/** Reads a fixture's cells for a sheet, column by column; what could not be read is printed as it stands. */
export function cellsReader(rig: Rig, columns: readonly PatchColumn[]): (fixture: Fixture) => readonly SheetCell[] {
  const readers = columns.map((column) => readerOf(column, rig));
  return (fixture) => readers.map((read) => read(fixture));
}

type CellReader = (fixture: Fixture) => SheetCell;

function readerOf(column: PatchColumn, rig: Rig): CellReader {
  switch (column) {
    case 'footprint':
      return footprintReader(rig);
    case 'universe':
    case 'universe2':
    case 'universe3':
    case 'universe4': {
      const part = partOf(column);
      return (fixture) => universeCell(fixture, part);
    }
    case 'slot':
    case 'slot2':
    case 'slot3':
    case 'slot4': {
      const part = partOf(column);
      return (fixture) => slotCell(fixture, part);
    }
    case 'channel':
      return (fixture) => fixture.channel ?? unreadableCell(fixture, 'channel');
    case 'order':
    case 'along':
      return (fixture) => unreadableCell(fixture, column) ?? fixture[column];
    case 'cable':
      return (fixture) => fixture.cable ?? unreadableCell(fixture, 'cable');
    default:
      return (fixture) => fixture[column];
  }
}

/** The slots of a fixture's mode. Looked up once for each way in which type and mode are written. */
function footprintReader(rig: Rig): CellReader {
  const known = new Map<string, Map<string, SheetCell>>();
  return (fixture) => {
    const ofType = known.get(fixture.type) ?? new Map<string, SheetCell>();
    known.set(fixture.type, ofType);
    const cell = ofType.get(fixture.mode);
    if (cell !== undefined) return cell;
    const footprints = modeOf(rig, fixture)?.footprints ?? [];
    const printed = footprints.length === 1 ? (footprints[0] ?? null) : formatFootprints(footprints);
    ofType.set(fixture.mode, printed);
    return printed;
  };
}

const partOf = (column: string) => Number(column.replace(/\D+/, '') || 1) - 1;

function universeCell(fixture: Fixture, part: number): SheetCell {
  const address = fixture.addresses[part] ?? null;
  return address === null ? null : universeOf(address);
}

function slotCell(fixture: Fixture, part: number): SheetCell {
  const address = fixture.addresses[part] ?? null;
  if (address !== null) return slotOf(address);
  const field = ADDRESS_FIELDS[part];
  return field === undefined ? null : unreadableCell(fixture, field);
}

/** A cell that could not be read, as text that reads back as the same. */
function unreadableCell(fixture: Fixture, field: Field): SheetCell {
  const cell = fixture.unreadable.find((each) => each.field === field);
  return cell === undefined ? null : formatCell(field, cell.value);
}
