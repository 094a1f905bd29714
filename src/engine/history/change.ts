import type { CellValue } from '../model/field.ts';

/** The parts of a rig whose rows a history tells of. */
export const CHANGE_PARTS = ['unit', 'card', 'mode', 'position', 'universe', 'note', 'wanted', 'signature'] as const;

export type ChangePart = (typeof CHANGE_PARTS)[number];

/** What a cell of a row held: a list only where the row itself keeps one. */
export type ToldValue = CellValue | readonly CellValue[];

/** The cells of a row that hold something. */
export type ToldCells = Readonly<Record<string, ToldValue>>;

/** One cell of a rig that became another, or a row that came or went. */
export type Change = {
  readonly part: ChangePart;
  /** The id of the row within its part. */
  readonly row: string;
} & What;

type What =
  | { readonly field: string; readonly before: ToldValue; readonly after: ToldValue }
  /** The row came: `before` is null. It went: `after` is. */
  | { readonly field: null; readonly before: ToldCells | null; readonly after: ToldCells | null };
