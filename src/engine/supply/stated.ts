import type { Fixture } from '../model/fixture.ts';
import type { Physical } from '../model/fixture-type.ts';
import type { Mode } from '../model/rig.ts';

/** A unit and its mode, as the rig knows it. */
export interface ModedUnit {
  readonly fixture: Fixture;
  readonly mode: Mode | undefined;
}

/** What the copied type of a unit states of it; undefined without a copy. */
export const physicalOf = ({ mode }: ModedUnit): Physical | undefined => mode?.pin?.type.physical;

/** Watts and kilograms that no unit has: a figure of a file that cannot be one is as good as none. */
const MOST = 100_000;

const figure = (value: number | null | undefined): number | null =>
  typeof value === 'number' && value > 0 && value < MOST ? value : null;

/** In watts. */
export const powerOf = (physical: Physical | undefined): number | null => figure(physical?.power);

export function factorOf(physical: Physical | undefined): number | null {
  const factor = figure(physical?.powerFactor);
  return factor !== null && factor <= 1 ? factor : null;
}

/** In kilograms. */
export const weightOf = (physical: Physical | undefined): number | null => figure(physical?.weight);

/** EN 50160 lets a supply differ from its nominal voltage by a tenth (from memory), and manuals state either. */
const TOLERANCE = 0.1;

export function suits(physical: Physical | undefined, volts: number): boolean {
  const stated = physical?.voltage ?? null;
  return stated === null || (volts >= stated.low * (1 - TOLERANCE) && volts <= stated.high * (1 + TOLERANCE));
}

/** A sum to the millionth, kept whole while it grows: it is the same in whatever order its parts come. */
export function exactSum(parts: Iterable<number>): number {
  let millionths = 0;
  for (const part of parts) millionths += Math.round(part * MILLION);
  return millionths / MILLION;
}

const MILLION = 1_000_000;
