/** Power that is drawn at a power factor, 0 to 1. */
export interface Draw {
  readonly watts: number;
  readonly powerFactor: number;
}

/** Current of one phase in amps: P / (V · PF). Source: textbook. [SU2] */
export const current = ({ watts, powerFactor }: Draw, volts: number): number => watts / (volts * powerFactor);

/** Current of each line of a balanced three-phase supply in amps, of its whole power; volts between lines. Source: textbook. [SU2] */
export const lineCurrent = ({ watts, powerFactor }: Draw, volts: number): number =>
  watts / (Math.sqrt(3) * volts * powerFactor);

/** Something for each of three phases. */
export type OfPhases<Of> = readonly [Of, Of, Of];

/** What hangs on a three-phase supply: each draw between a line and neutral, or between two lines (1 and 2, 2 and 3, 3 and 1). */
export interface ThreePhaseLoad {
  readonly toNeutral: OfPhases<Draw>;
  readonly betweenLines: OfPhases<Draw>;
}

/** Currents of a three-phase supply in amps. */
export interface ThreePhaseCurrents {
  readonly lines: OfPhases<number>;
  readonly neutral: number;
}

/**
 * Currents of any three-phase supply in amps, balanced or not, of linear loads that lag; `volts` between line and neutral, lines
 * 120 degrees apart. Source: textbook. [SU3]
 */
export function threePhaseCurrents({ toNeutral, betweenLines }: ThreePhaseLoad, volts: number): ThreePhaseCurrents {
  const star = ofPhases((phase) => phasor(toNeutral[phase], volts, -phase * THIRD));
  // The voltage from a line to the next leads the line's own by 30 degrees.
  const delta = ofPhases((phase) => phasor(betweenLines[phase], Math.sqrt(3) * volts, Math.PI / 6 - phase * THIRD));
  const lines = ofPhases((phase) => size(minus(plus(star[phase], delta[phase]), delta[before(phase)])));
  return { lines, neutral: size(plus(plus(star[0], star[1]), star[2])) };
}

/**
 * Current of the neutral in amps, from those of three phases in phase with their voltages. `third` is the third harmonic of each
 * phase as a share of its fundamental: 0 for linear loads; it adds up in the neutral. Source: textbook. [SU4]
 */
export function neutralCurrent(phases: OfPhases<number>, third: number): number {
  const [a, b, c] = phases;
  const unbalanced = a * a + b * b + c * c - a * b - b * c - c * a;
  const tripled = third * (a + b + c);
  // Rounding must not make the root of a balanced supply imaginary. Each phase is the root of 1 + third² of its fundamental.
  return Math.sqrt((Math.max(0, unbalanced) + tripled * tripled) / (1 + third * third));
}

interface Phasor {
  readonly re: number;
  readonly im: number;
}

type Phase = 0 | 1 | 2;

const THIRD = (2 * Math.PI) / 3;
const PHASES = [0, 1, 2] as const;

const ofPhases = <Of>(of: (phase: Phase) => Of): OfPhases<Of> => [of(PHASES[0]), of(PHASES[1]), of(PHASES[2])];
const before = (phase: Phase): Phase => (phase === 0 ? 2 : phase === 1 ? 0 : 1);

function phasor(draw: Draw, volts: number, angle: number): Phasor {
  const amps = draw.watts === 0 ? 0 : current(draw, volts);
  const at = angle - Math.acos(draw.powerFactor);
  return { re: amps * Math.cos(at), im: amps * Math.sin(at) };
}

const plus = (a: Phasor, b: Phasor): Phasor => ({ re: a.re + b.re, im: a.im + b.im });
const minus = (a: Phasor, b: Phasor): Phasor => ({ re: a.re - b.re, im: a.im - b.im });
const size = ({ re, im }: Phasor): number => Math.hypot(re, im);
