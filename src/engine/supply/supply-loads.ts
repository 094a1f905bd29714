import { nameKey } from '../model/card.ts';
import { type Circuit, type Plant, plantOf, type Supply } from '../model/plant.ts';
import type { Rig } from '../model/rig.ts';
import { seatOf, voltsToNeutral } from './circuit-feed.ts';
import type { CircuitLoad } from './circuit-loads.ts';
import { type Draw, neutralCurrent, type OfPhases, threePhaseCurrents } from './current.ts';
import { exactSum } from './stated.ts';

/** A circuit on a supply, as its lines see it. */
export interface SeatedLoad {
  readonly card: Pick<Circuit, 'phase'>;
  readonly amps: number;
}

/** What a supply carries, in amps. */
export interface LineCurrents {
  /** One for a supply of one phase, else three. */
  readonly lines: readonly number[];
  readonly neutral: number;
}

/** What a supply carries, with the circuits that name it. */
export interface SupplyLoad extends LineCurrents {
  readonly supply: Supply;
  readonly volts: number;
  /** In natural order. */
  readonly circuits: readonly CircuitLoad[];
  /** Those that lie on no line it has: they are in no figure of a line. */
  readonly unseated: readonly CircuitLoad[];
  readonly watts: number;
  readonly voltAmps: number;
}

/**
 * The currents of the lines and the neutral. Each circuit's current is taken to lie in phase with the voltage it lies across: the power
 * factor of a manual has no angle. That is exact where all factors are alike; circuits of one line are added up, which is never too little.
 * Circuits without a place on the supply are left out. [SU11]
 */
export function lineCurrents(
  supply: Pick<Supply, 'phases' | 'third'>,
  circuits: readonly SeatedLoad[],
  volts: number,
): LineCurrents {
  const star: [number[], number[], number[]] = [[], [], []];
  const delta: [number[], number[], number[]] = [[], [], []];
  for (const { card, amps } of circuits) {
    const seat = seatOf(card, supply);
    if (seat !== undefined) (seat.kind === 'line' ? star : delta)[seat.at].push(amps);
  }
  const toNeutral = star.map(exactSum) as unknown as OfPhases<number>;
  // What leaves by the line comes back by the neutral.
  if (supply.phases === 1) return { lines: [toNeutral[0]], neutral: toNeutral[0] };
  const between = delta.map(exactSum) as unknown as OfPhases<number>;
  const { lines } = threePhaseCurrents(
    { toNeutral: drawsAt(toNeutral, volts), betweenLines: drawsAt(between, volts * Math.sqrt(3)) },
    volts,
  );
  return { lines, neutral: neutralCurrent(toNeutral, supply.third ?? 0) };
}

const drawsAt = (amps: OfPhases<number>, volts: number): OfPhases<Draw> =>
  amps.map((each) => ({ watts: each * volts, powerFactor: 1 })) as unknown as OfPhases<Draw>;

/** Every supply in natural order, with the circuits that name it. [SU11] */
export function supplyLoads(rig: Rig, circuits: readonly CircuitLoad[]): readonly SupplyLoad[] {
  const plant = plantOf(rig.cards);
  return [...plant.supplies.values()].map((supply) => loadOf(plant, supply, circuits));
}

function loadOf(plant: Plant, supply: Supply, all: readonly CircuitLoad[]): SupplyLoad {
  const circuits = all.filter(({ card }) => card !== undefined && nameKey(card.supply) === supply.key);
  const volts = voltsToNeutral(supply, plant);
  const seated = circuits.flatMap(({ card, amps }) => (card === undefined ? [] : [{ card, amps }]));
  return {
    ...lineCurrents(supply, seated, volts),
    supply,
    volts,
    circuits,
    unseated: circuits.filter(({ card }) => card !== undefined && seatOf(card, supply) === undefined),
    watts: exactSum(circuits.map(({ watts }) => watts)),
    voltAmps: exactSum(circuits.map(({ voltAmps }) => voltAmps)),
  };
}

/** How far the largest line may lie above the mean of the three before it is worth a note: a choice of ours, not of a code. */
export const UNBALANCED = 0.2;

/** How far the largest line lies above the mean, as a share of it; 0 where nothing flows. [SU12] */
export function unbalance(lines: readonly number[]): number {
  const mean = lines.reduce((sum, amps) => sum + amps, 0) / Math.max(1, lines.length);
  return mean === 0 ? 0 : Math.max(...lines) / mean - 1;
}
