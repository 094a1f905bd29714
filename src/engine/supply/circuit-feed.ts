import { nameKey } from '../model/card.ts';
import type { Circuit, Plant, Supply } from '../model/plant.ts';
import { rulesOf } from './load-rules.ts';

/** What a card is called in a finding: its name; its key where that is another name's, so that no two are called the same. */
export const calledBy = (key: string, name: string): string => (nameKey(name) === key ? name : key);

/** The supply that a circuit is on; undefined for none, and for one that is not there. */
export const supplyOf = (circuit: Circuit | undefined, plant: Plant): Supply | undefined =>
  circuit === undefined ? undefined : plant.supplies.get(nameKey(circuit.supply));

/** Volts between line and neutral of a supply; of none, the nominal voltage of the venue. [SU9] */
export const voltsToNeutral = (supply: Supply | undefined, plant: Plant): number =>
  supply?.volts ?? rulesOf(plant).volts;

/** Volts between the two conductors of a circuit: √3 as many between two lines of a three-phase supply. [SU9] */
export function voltsOf(circuit: Circuit | undefined, plant: Plant): number {
  const supply = supplyOf(circuit, plant);
  const volts = voltsToNeutral(supply, plant);
  return supply?.phases === 3 && isBetween(circuit?.phase ?? null) ? Math.sqrt(3) * volts : volts;
}

const isBetween = (phase: Circuit['phase']) => phase !== null && phase.length > 1;

/** Where a circuit lies on its supply: on a line, counted from 0, or between a line and the next; undefined when the supply has no such place. [SU11] */
export type Seat = { readonly kind: 'line' | 'between'; readonly at: 0 | 1 | 2 };

export function seatOf({ phase }: Pick<Circuit, 'phase'>, { phases }: Pick<Supply, 'phases'>): Seat | undefined {
  if (phases === 1) return phase === null || phase === '1' ? { kind: 'line', at: 0 } : undefined;
  return phase === null ? undefined : SEATS[phase];
}

const SEATS = {
  '1': { kind: 'line', at: 0 },
  '2': { kind: 'line', at: 1 },
  '3': { kind: 'line', at: 2 },
  '1-2': { kind: 'between', at: 0 },
  '2-3': { kind: 'between', at: 1 },
  '3-1': { kind: 'between', at: 2 },
} as const satisfies Readonly<Record<NonNullable<Circuit['phase']>, Seat>>;
