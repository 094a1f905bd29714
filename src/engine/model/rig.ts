import { emptyTable, type Table } from '#base/table.ts';
import type { Pin } from '../type/pin.ts';
import type { Universe } from './address.ts';
import type { Card } from './card.ts';
import type { Fixture } from './fixture.ts';
import type { SignedHazard } from './fixture-type.ts';
import type { ModeId, NoteId, PositionId } from './ids.ts';

/** A mode of a fixture type as this rig uses it. */
export interface Mode {
  readonly id: ModeId;
  readonly type: string;
  readonly mode: string;
  /** Slots of each break, break 1 first: 1 to 4 numbers, each 0 to 512 and at least one above 0. */
  readonly footprints: readonly number[];
  /** What the library says of it, copied; null when only its footprint is known. */
  readonly pin: Pin | null;
}

export interface Position {
  readonly id: PositionId;
  readonly name: string;
  /** Where it stands among the positions: ascending, ties by name. */
  readonly order: number;
}

/** What a crew says of a universe. `id` is its number as text. */
export interface UniverseLabel {
  readonly id: string;
  readonly universe: Universe;
  readonly label: string;
}

export interface Note {
  readonly id: NoteId;
  readonly text: string;
  readonly order: number;
}

/** The firmware that the units of a type are meant to have. `id` is the folded type name. */
export interface WantedFirmware {
  readonly id: string;
  readonly type: string;
  readonly version: string;
}

/** Who answers for a hazard in this rig, and for which types they said so. */
export interface Signature {
  readonly id: SignedHazard;
  readonly person: string;
  /** When, as a day: `2026-11-25`. */
  readonly on: string;
  readonly types: readonly string[];
}

/**
 * A whole rig as a value: what `document/read` makes of a document and every question is asked of. Any rig at all is
 * legal: trouble in it is reported by `check`, never thrown.
 */
export interface Rig {
  readonly fixtures: Table<Fixture>;
  readonly modes: Table<Mode>;
  readonly positions: Table<Position>;
  readonly universes: Table<UniverseLabel>;
  readonly notes: Table<Note>;
  readonly wanted: Table<WantedFirmware>;
  readonly signatures: Table<Signature>;
  /** Network, data lines, feeds and limits: `plantOf` says what they amount to. */
  readonly cards: Table<Card>;
}

export const EMPTY_RIG: Rig = Object.freeze({
  fixtures: emptyTable<Fixture>(),
  modes: emptyTable<Mode>(),
  positions: emptyTable<Position>(),
  universes: emptyTable<UniverseLabel>(),
  notes: emptyTable<Note>(),
  wanted: emptyTable<WantedFirmware>(),
  signatures: emptyTable<Signature>(),
  cards: emptyTable<Card>(),
});
