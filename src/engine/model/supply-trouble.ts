/** Trouble of feeds and limits. Circuits, supplies and positions by their names; amps and kilograms to the hundredth. */
export type SupplyTrouble =
  /** What is known to hang on a circuit draws more than its breaker is made for. */
  | { readonly rule: 'circuit-over-rating'; readonly circuit: string; readonly amps: number; readonly rating: number }
  | {
      readonly rule: 'line-over-rating';
      readonly supply: string;
      /** Counted from 1. */
      readonly line: number;
      readonly amps: number;
      readonly rating: number;
    }
  /** More flows in the neutral than a line is made for. */
  | { readonly rule: 'neutral-over-rating'; readonly supply: string; readonly amps: number; readonly rating: number }
  /** Known units and what else hangs there weigh more than somebody allows. */
  | {
      readonly rule: 'position-over-limit';
      readonly position: string;
      readonly kilograms: number;
      readonly limit: number;
      readonly person: string;
      readonly on: string;
    }
  /** Within its rating, but more than the venue's rules let a breaker carry for hours. */
  | {
      readonly rule: 'circuit-over-share';
      readonly circuit: string;
      readonly amps: number;
      readonly rating: number;
      readonly share: number;
      readonly rules: string;
    }
  | {
      readonly rule: 'line-over-share';
      readonly supply: string;
      readonly line: number;
      readonly amps: number;
      readonly rating: number;
      readonly share: number;
      readonly rules: string;
    }
  /** A circuit names a supply that is not there. */
  | { readonly rule: 'circuit-supply-gone'; readonly circuit: string; readonly supply: string }
  /** A circuit has a phase that its supply has not, or none of three. */
  | {
      readonly rule: 'circuit-phase';
      readonly circuit: string;
      readonly supply: string;
      readonly phases: 1 | 3;
      readonly phase: string | null;
    }
  /** More units of a type than its manual allows on such a breaker. */
  | {
      readonly rule: 'circuit-crowded';
      readonly circuit: string;
      readonly type: string;
      readonly units: number;
      readonly breaker: string;
      readonly most: number;
    }
  /** Units on a voltage that they are not made for. */
  | { readonly rule: 'unit-voltage'; readonly circuit: string; readonly volts: number }
  /** Nobody knows what some units of a circuit draw, so that its load is more than is known. */
  | { readonly rule: 'circuit-power-unknown'; readonly circuit: string }
  /** Loads are reckoned at a voltage that nobody said. */
  | { readonly rule: 'volts-unsaid'; readonly volts: number }
  /** Nobody knows what some units at a position with a limit weigh. */
  | { readonly rule: 'position-weight-unknown'; readonly position: string }
  /** Nobody is named who answers for a limit. */
  | { readonly rule: 'limit-unsigned'; readonly position: string; readonly limit: number }
  /** Units name a circuit that no card describes, though other circuits are described. */
  | { readonly rule: 'circuit-undescribed'; readonly circuit: string }
  /** The largest line lies well above the mean of the three. */
  | { readonly rule: 'lines-unbalanced'; readonly supply: string; readonly most: number; readonly least: number };

export const SUPPLY_RULES = [
  'circuit-over-rating',
  'line-over-rating',
  'neutral-over-rating',
  'position-over-limit',
  'circuit-over-share',
  'line-over-share',
  'circuit-supply-gone',
  'circuit-phase',
  'circuit-crowded',
  'unit-voltage',
  'circuit-power-unknown',
  'volts-unsaid',
  'position-weight-unknown',
  'limit-unsigned',
  'circuit-undescribed',
  'lines-unbalanced',
] as const satisfies readonly SupplyTrouble['rule'][];
