import { FIELDS } from '../model/field.ts';
import type { Fixture } from '../model/fixture.ts';
import { cellsOf } from '../model/read-fixture.ts';
import type { Mode, Note, Position, Signature, UniverseLabel, WantedFirmware } from '../model/rig.ts';
import type { ToldCells } from './change.ts';

/** What a history tells of a row of each part: its cells that hold something. What names the row and never changes is left out. */
export const TOLD_CELLS = {
  unit: (row: Fixture): ToldCells => cellsOf(row),
  card: ({ cells }: { readonly cells: ToldCells }): ToldCells => cells,
  // A copy of a library's mode is told by its name: what is in it stands in the log, and may be megabytes.
  mode: ({ type, mode, footprints, pin }: Mode): ToldCells =>
    held({ type, mode, footprints, pin: pin === null ? null : `${pin.typeId} ${pin.number} ${pin.hash}` }),
  position: ({ name, order }: Position): ToldCells => held({ name, order }),
  universe: ({ label }: UniverseLabel): ToldCells => held({ label }),
  note: ({ text, order }: Note): ToldCells => held({ text, order }),
  wanted: ({ type, version }: WantedFirmware): ToldCells => held({ type, version }),
  signature: ({ person, on, types }: Signature): ToldCells => held({ person, on, types }),
} as const;

/** The order in which the cells of a row are told. */
export function fieldsTold(before: ToldCells, after: ToldCells): readonly string[] {
  const all = new Set([...Object.keys(before), ...Object.keys(after)]);
  const known = FIELDS.filter((field) => all.has(field));
  return [...known, ...[...all].filter((field) => !(FIELDS as readonly string[]).includes(field))];
}

function held(cells: ToldCells): ToldCells {
  return Object.fromEntries(Object.entries(cells).filter(([, value]) => value !== null));
}
