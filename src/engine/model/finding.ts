import type { Slot, Universe } from './address.ts';
import type { UnreadableCell } from './fixture.ts';
import type { SignedHazard } from './fixture-type.ts';
import type { FixtureId } from './ids.ts';
import type { PlantTrouble } from './plant-trouble.ts';

export type Severity = 'blocker' | 'caution' | 'note';

/** A run of slots of one universe, both ends counted in. */
export interface SlotRun {
  readonly universe: Universe;
  readonly first: Slot;
  readonly last: Slot;
}

/** What a rule found, as data; `words/` says it. Each union member is one rule. */
export type Trouble =
  | PlantTrouble
  /** A run of slots claimed by the same two or more fixtures; or, with one fixture named, by two of its own breaks. */
  | { readonly rule: 'slots-claimed-twice'; readonly run: SlotRun }
  /** Fixtures with one start address, mode and channel: units that act as one (common practice). */
  | { readonly rule: 'acting-as-one'; readonly run: SlotRun }
  /** `over` slots of break `part` (1-based) lie past slot 512 of the universe. */
  | { readonly rule: 'past-the-end'; readonly run: SlotRun; readonly part: number; readonly over: number }
  | { readonly rule: 'unknown-type'; readonly type: string }
  | { readonly rule: 'unknown-mode'; readonly type: string; readonly mode: string }
  /** No start address at all, or none for break `part` (1-based) of a fixture whose other breaks have one. */
  | { readonly rule: 'unpatched'; readonly part: number | null }
  | { readonly rule: 'same-place'; readonly position: string; readonly unit: string }
  /** One channel on fixtures of unlike type or mode. */
  | { readonly rule: 'channel-on-unlike'; readonly channel: number }
  /** One channel on like fixtures at unlike addresses: legal, often meant, worth knowing. */
  | { readonly rule: 'channel-shared'; readonly channel: number }
  | { readonly rule: 'unreadable'; readonly cell: UnreadableCell }
  /** A pinned mode in which no channel takes a slot. */
  | { readonly rule: 'no-slots'; readonly type: string; readonly mode: string }
  /** Units found with a firmware that does not have the mode they are set to. */
  | {
      readonly rule: 'firmware-mode';
      readonly type: string;
      readonly mode: string;
      readonly found: string;
      readonly needs: readonly string[];
    }
  /** Units found with another firmware than their type is meant to have. */
  | { readonly rule: 'firmware-wanted'; readonly type: string; readonly wanted: string }
  /** Nobody answers for a hazard of these types in this rig. */
  | { readonly rule: 'hazard-unsigned'; readonly hazard: SignedHazard; readonly types: readonly string[] }
  /** The library has another revision than the one copied here. */
  | { readonly rule: 'library-differs'; readonly type: string; readonly here: number; readonly newest: number };

export type Rule = Trouble['rule'];

/** One finding. `key` is equal exactly when the finding is the same; `fixtures` are sorted by id; one that is of no unit names none. */
export type Finding = Trouble & {
  readonly key: string;
  readonly severity: Severity;
  readonly fixtures: readonly FixtureId[];
};
