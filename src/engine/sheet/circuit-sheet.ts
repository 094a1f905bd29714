import type { Rig } from '../model/rig.ts';
import { circuitLoads } from '../supply/circuit-loads.ts';
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
  const { rules, rule, unit, circuitCautions } = standing.loads;
  const circuits = circuitLoads(rig, rules);
  const rows = rowsFrom(circuits, (load): readonly SheetCell[] => [
    load.circuit,
    load.units.length,
    load.units.map(unit).join(', '),
    rounded(load.watts, 1),
    rounded(load.amps, 2),
    rules.volts,
    rule,
    rounded(load.rating, 2),
    load.unknown.length,
    load.unknown.map(unit).join(', '),
    load.factorless.length,
    load.unsuited.map(unit).join(', '),
    load.limits.map(({ type, breaker, most }) => `${type}: ${[breaker, most].join(' ').trim()}`).join('; '),
  ]);
  const fixtures = circuits.flatMap(({ units }) => units);
  const cautions = [...plainCautions(circuitCautions), ...cautionLines(rig, fixtures, standing)];
  return { kind: 'circuits', columns: COLUMNS, ...rows, foot: [...cautions, ...findingLines(standing)] };
}
