import type { Absolute } from './address.ts';
import type { CellValue, Field } from './field.ts';
import type { FixtureId } from './ids.ts';

/** One physical controllable unit: one row of the patch. Plain, frozen data; everything a cell could not be read as stands in `unreadable`. */
export interface Fixture {
  readonly id: FixtureId;
  /** Where the row was put among the others: ascending, ties by id. */
  readonly order: number;
  /** The number by which the desk's operator calls it, 1 or more. */
  readonly channel: number | null;
  readonly position: string;
  /** Its number along the position, with any suffix: `4`, `4A`. */
  readonly unit: string;
  readonly type: string;
  readonly mode: string;
  /** Start address of each break, break 1 first; null where a break has none. No trailing nulls: `[]` is unpatched. */
  readonly addresses: readonly (Absolute | null)[];
  readonly purpose: string;
  readonly colour: string;
  readonly circuit: string;
  readonly notes: string;
  /** The firmware it was found to have, as its display or the network says it. */
  readonly firmware: string;
  /** The data line it is on, by its name. */
  readonly run: string;
  /** Its place along the run: ascending, ties by id. */
  readonly along: number;
  /** Metres of cable from what is before it on the run; null: not known. */
  readonly cable: number | null;
  /** Why no plan may move its addresses; empty: any may. */
  readonly lock: string;
  /** Cells whose content the field cannot mean, as they stand in the document. */
  readonly unreadable: readonly UnreadableCell[];
}

export interface UnreadableCell {
  readonly field: Field;
  readonly value: Exclude<CellValue, null>;
}

/** The cells of a row as stored; a missing field is empty. */
export type Cells = Partial<Readonly<Record<Field, CellValue>>>;
