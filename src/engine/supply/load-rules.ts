import type { Plant } from '../model/plant.ts';

/** By which rules loads are reckoned. Never taken from where somebody is: a crew chooses them, and they stand beside each figure. */
export interface LoadRules {
  /** Nominal voltage between the two conductors of a circuit. */
  readonly volts: number;
  /**
   * How much of a breaker's rating a load of three hours or more may take; null: all of it. 0.8 is the custom where continuous
   * loads are sized at 125 % (North America, from trade sources); other codes have no such share in general (from memory).
   */
  readonly share: number | null;
}

/** The rules that hold at the venue of a rig, as its crew says them. */
export interface VenueRules extends LoadRules {
  /** What the crew calls them; empty while nobody said. */
  readonly name: string;
  /** Whether somebody said the voltage, or it is the one that holds until then. */
  readonly voltage: 'said' | 'taken';
}

/** Nominal voltages to choose from (common practice). */
export const NOMINAL_VOLTAGES = [100, 110, 120, 127, 200, 208, 220, 230, 240] as const;

export const CONTINUOUS_SHARE = 0.8;

/** What holds until somebody chooses. */
export const FIRST_RULES: LoadRules = Object.freeze({ volts: 230, share: null });

/** The rules of a rig: those of its set-up, else the first ones, which are then said to be nobody's. [SU9] */
export const rulesOf = ({ setup }: Plant): VenueRules => ({
  volts: setup.volts ?? FIRST_RULES.volts,
  share: setup.share,
  name: setup.rules.trim(),
  voltage: setup.volts === null ? 'taken' : 'said',
});

/** The least rating a breaker must have for these loads in amps; `other` are loads that are on for less than three hours. [SU5] */
export const ratingFor = (continuous: number, other: number, { share }: LoadRules): number =>
  continuous / (share ?? 1) + other;

/** What a breaker of a rating may carry for three hours or more, in amps. [SU5] */
export const usableAmps = (rating: number, { share }: LoadRules): number => rating * (share ?? 1);

/** Whether a load is over what is allowed; a rounding of its last places is not. */
export const exceeds = (load: number, allowed: number): boolean => load > allowed * (1 + 1e-9);

/** How much more than its phases the neutral of a feeder to phase-control dimmers is made for, of single conductors (a trade column on NEC 520.53). */
const DIMMER_NEUTRAL = 1.3;

/** Amps the neutral of such a feeder is made for. [SU5] */
export const dimmerNeutral = (phase: number): number => phase * DIMMER_NEUTRAL;
