import type { Pin } from '../type/pin.ts';
import type { Universe } from './address.ts';
import type { CardEdit } from './card.ts';
import type { CellValue, Field } from './field.ts';
import type { Cells } from './fixture.ts';
import type { SignedHazard } from './fixture-type.ts';
import type { FixtureId, NoteId } from './ids.ts';

/** One change of a rig. A plan is a list of these; `document/edit` is the only place that carries them out. */
export type Edit =
  | { readonly kind: 'add-fixture'; readonly fixture: FixtureId; readonly cells: Cells }
  | { readonly kind: 'remove-fixture'; readonly fixture: FixtureId }
  | { readonly kind: 'set-cell'; readonly fixture: FixtureId; readonly field: Field; readonly value: CellValue }
  | {
      readonly kind: 'set-mode';
      readonly type: string;
      readonly mode: string;
      readonly footprints: readonly number[];
      /** Left out: the mode is known by its footprint only. */
      readonly pin?: Pin | null;
    }
  | { readonly kind: 'remove-mode'; readonly type: string; readonly mode: string }
  | { readonly kind: 'set-position'; readonly name: string; readonly order: number }
  | { readonly kind: 'remove-position'; readonly name: string }
  | { readonly kind: 'set-universe'; readonly universe: Universe; readonly label: string }
  | { readonly kind: 'set-note'; readonly note: NoteId; readonly text: string; readonly order: number }
  | { readonly kind: 'remove-note'; readonly note: NoteId }
  /** An empty version takes it away. */
  | { readonly kind: 'set-wanted'; readonly type: string; readonly version: string }
  /** An empty person takes it away. */
  | {
      readonly kind: 'set-signature';
      readonly hazard: SignedHazard;
      readonly person: string;
      readonly on: string;
      readonly types: readonly string[];
    }
  | CardEdit;

/** A proposed set of edits, previewed before it is applied as one undoable step. `name` says what it is for. */
export interface Plan {
  readonly name: PlanName;
  readonly edits: readonly Edit[];
}

export type PlanName =
  | 'edit'
  | 'paste'
  | 'fill'
  | 'series'
  | 'insert'
  | 'duplicate'
  | 'remove'
  | 'move'
  | 'swap'
  | 'place'
  | 'clear-clash'
  | 'allocate'
  | 'repair'
  | 'renumber-channels'
  | 'renumber-units'
  | 'import'
  | 'set-mode'
  | 'set-position'
  | 'set-universe'
  | 'set-note'
  | 'take-type'
  | 'set-wanted'
  | 'sign-hazard'
  | 'set-network'
  | 'set-run'
  | 'set-supply'
  | 'balance'
  | 'set-limit'
  | 'set-house'
  | 'report-fault'
  | 'mend-fault'
  | 'swap-device'
  | 'note-reading'
  | 'set-hire'
  | 'lock'
  | 'put-back'
  | 'go-back'
  | 'tick'
  | 'take-proposal';
