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
  /** Each as wide as `columns`. */
  readonly rows: readonly (readonly SheetCell[])[];
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
