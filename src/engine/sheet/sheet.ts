import type { Finding } from '../model/finding.ts';
import type { PatchColumn } from './patch-format.ts';

export const SHEET_KINDS = ['patch', 'channels', 'universes', 'findings'] as const;

export type SheetKind = (typeof SHEET_KINDS)[number];

/** A cell of a sheet: numbers stay numbers, null is empty. */
export type SheetCell = string | number | null;

/** `first` and `last` are the ends of a slot run, `break` which of a fixture's breaks it is, `units` and `channels` name several. */
export type SheetColumn =
  | PatchColumn
  | 'label'
  | 'first'
  | 'last'
  | 'break'
  | 'severity'
  | 'finding'
  | 'units'
  | 'channels';

/** A line under the table: a part of the rig that is no fixture, so that the sheet is the whole rig, or a finding. */
export type FootLine =
  | { readonly kind: 'mode'; readonly type: string; readonly mode: string; readonly footprints: readonly number[] }
  | { readonly kind: 'position'; readonly name: string; readonly order: number }
  | { readonly kind: 'universe'; readonly universe: number; readonly label: string }
  | { readonly kind: 'note'; readonly text: string; readonly order: number }
  | { readonly kind: 'finding'; readonly severity: Finding['severity']; readonly text: string };

/** A sheet as typed rows and columns, before it is printed, drawn or written as bytes. */
export interface Sheet {
  readonly kind: SheetKind;
  readonly columns: readonly SheetColumn[];
  /** Each as wide as `columns`. Made while they are asked for, as often as they are, so that the first leaves at once. */
  readonly rows: Iterable<readonly SheetCell[]>;
  /** How many rows there are. */
  readonly length: number;
  readonly foot: readonly FootLine[];
}

/** What stands when the sheet is made, and how a finding is said. */
export interface Standing {
  readonly findings: readonly Finding[];
  readonly say: (finding: Finding) => string;
}

/** The findings as they stand at the foot of a sheet. */
export function findingLines({ findings, say }: Standing): readonly FootLine[] {
  return findings.map((finding) => ({ kind: 'finding', severity: finding.severity, text: say(finding) }));
}

/** Rows made of items one by one, whenever they are asked for. */
export function rowsFrom<Item>(
  items: readonly Item[],
  cells: (item: Item) => readonly SheetCell[],
): Pick<Sheet, 'rows' | 'length'> {
  const rows = {
    *[Symbol.iterator]() {
      for (const item of items) yield cells(item);
    },
  };
  return { rows, length: items.length };
}
