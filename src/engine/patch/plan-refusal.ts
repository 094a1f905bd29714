import type { Universe } from '../model/address.ts';
import type { CardKind } from '../model/card.ts';
import type { Field } from '../model/field.ts';
import type { Rule } from '../model/finding.ts';
import type { FixtureId } from '../model/ids.ts';

/** Why a plan could not be made, as data; `words/plans.ts` says it. */
export type PlanRefusal =
  /** No fixture was chosen. */
  | { readonly code: 'nothing-chosen' }
  | { readonly code: 'no-such-fixture'; readonly fixture: FixtureId }
  /** Everything already is as the plan would make it. */
  | { readonly code: 'changes-nothing' }
  /** None of the chosen fixtures has a start address. */
  | { readonly code: 'not-patched' }
  /** How many slots the fixture takes is not known, so that no room can be found for it. */
  | { readonly code: 'mode-unknown'; readonly fixture: FixtureId }
  /** `slots` do not fit into one universe. */
  | { readonly code: 'too-wide'; readonly fixture: FixtureId; readonly slots: number }
  /** No universe has `slots` free slots in a row. */
  | { readonly code: 'no-room'; readonly fixture: FixtureId; readonly slots: number }
  /** A break would run past slot 512: `over` slots do not fit. */
  | { readonly code: 'crosses-end'; readonly fixture: FixtureId; readonly over: number }
  /** The value is outside what the field holds. */
  | { readonly code: 'out-of-range'; readonly fixture: FixtureId; readonly field: Field; readonly value: number }
  /** A number the request is made with (a step, a count, a start) is not one it can be. */
  | { readonly code: 'bad-number'; readonly value: number }
  /** The first chosen cell starts no series. */
  | { readonly code: 'no-series'; readonly field: Field }
  /** The finding is not of a kind that moving a unit clears. */
  | { readonly code: 'not-a-clash'; readonly rule: Rule }
  /** The library's revision has no such mode. */
  | { readonly code: 'no-such-mode'; readonly mode: string }
  /** A fixture has an address for four breaks at most. */
  | { readonly code: 'too-many-breaks'; readonly mode: string; readonly breaks: number }
  /** A break of the mode takes more slots than a universe has. */
  | { readonly code: 'mode-too-wide'; readonly mode: string; readonly slots: number }
  /** It is locked: nobody moves it before it is unlocked. */
  | { readonly code: 'locked'; readonly fixture: FixtureId }
  /** Nothing more can be moved: these locked units hold what is left in its place. By id, never empty. */
  | { readonly code: 'held'; readonly fixtures: readonly FixtureId[] }
  /** A lock says why, or who set it. */
  | { readonly code: 'no-reason' }
  /** The finding does not stand any more. */
  | { readonly code: 'finding-gone' }
  /** The crew has not said how sACN numbers and Port-Addresses go together. */
  | { readonly code: 'no-convention' }
  /** The crew's convention gives the universe no Port-Address. */
  | { readonly code: 'no-port-address'; readonly universe: Universe }
  /** Every port of the node listens to something, or it has none. */
  | { readonly code: 'no-free-port'; readonly node: string }
  /** A port listens to every universe that travels by a network. */
  | { readonly code: 'nothing-unheard' }
  /** What is to be made or renamed has no name. */
  | { readonly code: 'no-name' }
  /** Another one is called so already. */
  | { readonly code: 'name-taken'; readonly name: string }
  /** The run, splitter or unit is not where the request has it. */
  | { readonly code: 'not-on-run' }
  /** The supply is not there any more. */
  | { readonly code: 'no-such-supply' }
  /** A supply of one phase has nothing to balance. */
  | { readonly code: 'one-phase'; readonly supply: string }
  /** What the request is about was not said. */
  | { readonly code: 'nothing-said'; readonly of: 'fault' | 'mending' | 'swap' | 'hours' | 'firmware' | 'line' }
  /** The card is not there any more. */
  | { readonly code: 'no-such-card'; readonly card: CardKind }
  /** None of the spare is left to take. */
  | { readonly code: 'no-spare-left'; readonly type: string };
