import { nameKey } from '../model/card.ts';
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
  'supply',
  'phase',
  'breaker',
  'breakerAmps',
  'count',
  'units',
  'watts',
  'voltAmps',
  'amps',
  'volts',
  'rule',
  'used',
  'rating',
  'unknown',
  'unknownUnits',
  'factorless',
  'unsuited',
  'perBreaker',
  'standing',
] as const satisfies readonly SheetColumn[];

/** One row per circuit, in natural order: what feeds it, what hangs on it, what that draws, and of what nobody knows it. [SU8] */
export function circuitSheet(rig: Rig, standing: Standing): Sheet {
  const { rule, units, circuitCautions } = standing.loads;
  const circuits = circuitLoads(rig);
  const said = findingsByCircuit(standing);
  const rows = rowsFrom(circuits, (load): readonly SheetCell[] => [
    load.circuit,
    load.card?.supply ?? '',
    load.card?.phase ?? '',
    load.card?.breaker ?? '',
    load.card?.rating ?? null,
    load.units.length,
    units(load.units),
    figure(load, load.watts, 1),
    figure(load, load.voltAmps, 1),
    figure(load, load.amps, 2),
    rounded(load.volts, 1),
    rule,
    load.usable === null ? null : figure(load, (load.amps / load.usable) * 100, 1),
    figure(load, load.asks, 2),
    load.unknown.length,
    units(load.unknown),
    load.factorless.length,
    units(load.unsuited),
    load.limits
      .map(({ type, breaker, most }) => `${type}: ${[breaker, most].filter((part) => part !== '').join(': ')}`)
      .join('; '),
    (said.get(load.key) ?? []).join('; '),
  ]);
  const fixtures = circuits.flatMap((load) => load.units);
  const cautions = [...plainCautions(circuitCautions), ...cautionLines(rig, fixtures, standing)];
  return { kind: 'circuits', columns: COLUMNS, ...rows, foot: [...cautions, ...findingLines(standing)] };
}

/** Nothing, rather than 0, where there are units and not one is known. */
const figure = ({ units, unknown }: CircuitLoad, value: number, digits: number): SheetCell =>
  units.length > 0 && units.length === unknown.length ? null : rounded(value, digits);

function findingsByCircuit({ findings, say }: Standing): ReadonlyMap<string, readonly string[]> {
  const said = new Map<string, string[]>();
  for (const finding of findings) {
    if (!('circuit' in finding)) continue;
    const key = nameKey(finding.circuit);
    said.set(key, [...(said.get(key) ?? []), say(finding)]);
  }
  return said;
}
