import type { CardField, CardKind } from '../model/card.ts';
import { modeOf } from '../model/find-mode.ts';
import type { Finding } from '../model/finding.ts';
import type { Fixture } from '../model/fixture.ts';
import type { Hazards } from '../model/fixture-type.ts';
import { foldName } from '../model/ids.ts';
import type { NamedSource } from '../model/named-source.ts';
import type { Delivery } from '../model/plant.ts';
import type { House } from '../model/record.ts';
import type { Mode, Rig } from '../model/rig.ts';
import { hasCopies } from '../type/copied-types.ts';
import type { PinnedUse } from '../type/pin-slots.ts';
import type { HireState } from '../upkeep/hires-due.ts';
import type { PatchColumn } from './patch-format.ts';
import type { SlotState } from './universe-slots.ts';

export const SHEET_KINDS = [
  'patch',
  'channels',
  'universes',
  'universe-slots',
  'channel-slots',
  'circuits',
  'positions',
  'findings',
  'network',
  'runs',
  'tech-pack',
  'fault-list',
] as const;

export type SheetKind = (typeof SHEET_KINDS)[number];

/** A cell of a sheet: numbers stay numbers, null is empty. */
export type SheetCell = string | number | null;

/**
 * `first` and `last` are the ends of a slot run, `break` which of a fixture's breaks it is and `ownSlot` which slot of that
 * break, `units` and `channels` name several. `cell` to `values` are what a slot does, `count` to `sum` what units draw and weigh,
 * `supply` to `used` what feeds them, `extra` to `remaining` what may hang there, `standing` the findings of that row,
 * `task` to `becomes` what is to be done, `fact` to `note` what the house says of itself, `faultOf` to `stands` what has to be mended or given back,
 * `putBack` to `tickedAt` what came of a line of a restore sheet.
 */
export type SheetColumn =
  | PatchColumn
  | 'label'
  | 'first'
  | 'last'
  | 'break'
  | 'state'
  | 'ownSlot'
  | 'cell'
  | 'does'
  | 'byte'
  | 'default'
  | 'highlight'
  | 'values'
  | 'count'
  | 'watts'
  | 'amps'
  | 'volts'
  | 'rule'
  | 'rating'
  | 'unknown'
  | 'unknownUnits'
  | 'factorless'
  | 'unsuited'
  | 'perBreaker'
  | 'weight'
  | 'sum'
  | 'severity'
  | 'finding'
  | 'units'
  | 'channels'
  | 'by'
  | 'sacn'
  | 'group'
  | 'portAddress'
  | 'node'
  | 'nodeAddress'
  | 'port'
  | 'slotsUsed'
  | 'runFrom'
  | 'runPlace'
  | 'runLink'
  | 'runMetres'
  | 'runUnknown'
  | 'runLoads'
  | 'runFindings'
  | 'supply'
  | 'phase'
  | 'breaker'
  | 'breakerAmps'
  | 'voltAmps'
  | 'used'
  | 'extra'
  | 'limit'
  | 'person'
  | 'on'
  | 'remaining'
  | 'standing'
  | 'task'
  | 'was'
  | 'becomes'
  | 'fact'
  | 'said'
  | 'numbering'
  | 'trim'
  | 'outletAt'
  | 'connector'
  | 'phases'
  | 'supplyAmps'
  | 'outlet'
  | 'carries'
  | 'endsAt'
  | 'role'
  | 'ports'
  | 'spare'
  | 'number'
  | 'where'
  | 'name'
  | 'phone'
  | 'email'
  | 'note'
  | 'faultOf'
  | 'fault'
  | 'seenBy'
  | 'seenOn'
  | 'item'
  | 'hiredFrom'
  | 'due'
  | 'stands'
  | 'putBack'
  | 'tickedBy'
  | 'tickedAt';

/** A line under the table: a part of the rig that is no fixture, so that the sheet is the whole rig, or a finding. */
export type FootLine =
  | { readonly kind: 'mode'; readonly type: string; readonly mode: string; readonly footprints: readonly number[] }
  | { readonly kind: 'position'; readonly name: string; readonly order: number }
  | { readonly kind: 'universe'; readonly universe: number; readonly label: string }
  | { readonly kind: 'note'; readonly text: string; readonly order: number }
  | { readonly kind: 'wanted'; readonly type: string; readonly version: string }
  | {
      readonly kind: 'signature';
      readonly hazard: string;
      readonly person: string;
      readonly on: string;
      /** One of the types they answer for; empty for none yet. */
      readonly type: string;
    }
  /** One cell of a card; its value as it is stored. */
  | {
      readonly kind: 'card';
      readonly card: CardKind;
      readonly key: string;
      readonly field: CardField;
      readonly value: string | number;
    }
  /** What to mind with the units of a type, or with all of it when no type is named. */
  | { readonly kind: 'caution'; readonly type: string; readonly text: string }
  | { readonly kind: 'finding'; readonly severity: Finding['severity']; readonly text: string };

/** A sheet as typed rows and columns, before it is printed, drawn or written as bytes. `changes`: of two rigs, what makes one the other. */
export interface Sheet {
  readonly kind: SheetKind | 'changes' | 'restore';
  readonly columns: readonly SheetColumn[];
  /** Each as wide as `columns`. Made while they are asked for, as often as they are, so that the first leaves at once. */
  readonly rows: Iterable<readonly SheetCell[]>;
  /** How many rows there are. */
  readonly length: number;
  /** Of a sheet of several tables: they stand one below the other, and it has no rows of its own. */
  readonly tables?: readonly SheetTable[];
  readonly foot: readonly FootLine[];
}

/** What each table of a sheet of several is of. */
export type SheetPart =
  | 'house'
  | 'positions'
  | 'supplies'
  | 'circuits'
  | 'outlets'
  | 'nodes'
  | 'universes'
  | 'units'
  | 'spares'
  | 'contacts'
  | 'notes'
  | 'faults'
  | 'hires';

/** One table of a sheet of several. */
export interface SheetTable extends Pick<Sheet, 'columns' | 'rows' | 'length'> {
  readonly part: SheetPart;
}

/** How what the record of a house says is said, and which day it is: `2026-11-25`, empty when nobody knows. */
export interface RecordStanding {
  readonly fact: (of: keyof House) => string;
  /** One of the few words that a cell of a card may be. */
  readonly choice: (word: string) => string;
  /** What stands in the place of who states a limit, where nobody does. */
  readonly noLimit: string;
  readonly unit: (of: { readonly unit: string; readonly called: string }) => string;
  readonly hire: (state: HireState) => string;
  readonly today: string;
  /** What to mind when units are mended or swapped. */
  readonly cautions: readonly string[];
}

/** How what a slot does is said. */
export interface SlotWords {
  readonly state: (state: SlotState) => string;
  /** Nothing for a hole; null when nobody knows. */
  readonly does: (uses: readonly PinnedUse[] | null) => string;
  readonly byte: (use: PinnedUse) => string;
  /** The stretches of its values in short; empty when they say nothing. */
  readonly values: (use: PinnedUse) => string;
}

/** How the rules that loads are reckoned by and units are said, and what to mind with loads and weights. */
export interface LoadStanding {
  /** How much of a breaker's rating the rules let a load take, and what they are called. */
  readonly rule: string;
  /** Names units in one cell. */
  readonly units: (fixtures: readonly Fixture[]) => string;
  readonly circuitCautions: readonly string[];
  readonly positionCautions: readonly string[];
}

/** How what is on a run is said. */
export interface RunStanding {
  readonly source: (from: NamedSource) => string;
  readonly unit: string;
  readonly splitter: (name: string) => string;
}

/** What stands when the sheet is made, how it is said, and what to mind with a type that has hazards. */
export interface Standing {
  readonly findings: readonly Finding[];
  readonly say: (finding: Finding) => string;
  readonly slots: SlotWords;
  readonly loads: LoadStanding;
  readonly runs: RunStanding;
  readonly cautions: (hazards: Hazards) => readonly string[];
  /** Who has the last word: under all cautions. */
  readonly cautionFoot: string;
  readonly record: RecordStanding;
  /** What a universe travels by. */
  readonly way: (by: Delivery['by']) => string;
}

/** The cautions of every type that is named on a sheet of these units, under which stands who has the last word. */
export function cautionLines(
  rig: Rig,
  fixtures: Iterable<Fixture>,
  standing: Pick<Standing, 'cautions' | 'cautionFoot'>,
): readonly FootLine[] {
  const types = new Map<string, Mode>();
  // The first row leaves when this is done: a rig without copies of the library has nobody to look at.
  for (const fixture of hasCopies(rig) ? fixtures : []) {
    const mode = modeOf(rig, fixture);
    if (mode?.pin) types.set(`${foldName(mode.type)} ${mode.pin.hash}`, mode);
  }
  const lines = new Map<string, FootLine>();
  for (const { type, pin } of types.values()) {
    for (const text of pin === null ? [] : standing.cautions(pin.type.hazards)) {
      lines.set(JSON.stringify([foldName(type), text]), { kind: 'caution', type, text });
    }
  }
  const sorted = [...lines].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, line]) => line);
  return sorted.length === 0 ? [] : [...sorted, { kind: 'caution', type: '', text: standing.cautionFoot }];
}

/** Cautions that are of no type: of all that stands on a sheet. */
export const plainCautions = (texts: readonly string[]): readonly FootLine[] =>
  texts.map((text) => ({ kind: 'caution', type: '', text }));

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

/** Rows made of items whenever they are asked for, any number of each; `length` of all of them. */
export function rowsFromEach<Item>(
  items: readonly Item[],
  length: number,
  rowsOfItem: (item: Item) => Iterable<readonly SheetCell[]>,
): Pick<Sheet, 'rows' | 'length'> {
  const rows = {
    *[Symbol.iterator]() {
      for (const item of items) yield* rowsOfItem(item);
    },
  };
  return { rows, length };
}
