import type { Rig } from '../model/rig.ts';
import { type CircuitLoad, circuitLoads } from '../supply/circuit-loads.ts';
import { rounded } from './rounded.ts';
import {
  cautionLines,
  findingLines,
  plainCautions,
  rowsFrom,
  type Sheet,
  type SheetCell,
  type SheetColumn,
  type Standing,
} from './sheet.ts';

const COLUMNS = [
  'circuit',
  'count',
  'units',
  'watts',
  'amps',
  'volts',
  'rule',
  'rating',
  'unknown',
  'unknownUnits',
  'factorless',
  'unsuited',
  'perBreaker',
] as const satisfies readonly SheetColumn[];

/** One row per circuit, in natural order: what hangs on it, what that draws, and of what nobody knows it. [SU8] */
export function circuitSheet(rig: Rig, standing: Standing): Sheet {
  const { rules, rule, units, circuitCautions } = standing.loads;
  const circuits = circuitLoads(rig, rules);
  const rows = rowsFrom(circuits, (load): readonly SheetCell[] => [
    load.circuit,
    load.units.length,
    units(load.units),
    figure(load, load.watts, 1),
    figure(load, load.amps, 2),
    rules.volts,
    rule,
    figure(load, load.rating, 2),
    load.unknown.length,
    units(load.unknown),
    load.factorless.length,
    units(load.unsuited),
    load.limits
      .map(({ type, breaker, most }) => `${type}: ${[breaker, most].filter((part) => part !== '').join(': ')}`)
      .join('; '),
  ]);
  const fixtures = circuits.flatMap((load) => load.units);
  const cautions = [...plainCautions(circuitCautions), ...cautionLines(rig, fixtures, standing)];
  return { kind: 'circuits', columns: COLUMNS, ...rows, foot: [...cautions, ...findingLines(standing)] };
}

/** Nothing, rather than 0, where not one unit is known. */
const figure = ({ units, unknown }: CircuitLoad, value: number, digits: number): SheetCell =>
  units.length === unknown.length ? null : rounded(value, digits);
