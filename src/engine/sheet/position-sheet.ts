import type { Rig } from '../model/rig.ts';
import { type PositionLoad, positionLoads } from '../supply/position-loads.ts';
import { rounded } from './rounded.ts';
import {
  cautionLines,
  findingLines,
  plainCautions,
  rowsFromEach,
  type Sheet,
  type SheetCell,
  type SheetColumn,
  type Standing,
} from './sheet.ts';

const COLUMNS = [
  'position',
  'unit',
  'channel',
  'type',
  'mode',
  'weight',
  'sum',
  'unknown',
] as const satisfies readonly SheetColumn[];

/** One row per unit by position and number; the last of a position has the sum of those known, and how many are not. [SU8] */
export function positionSheet(rig: Rig, standing: Standing): Sheet {
  const positions = positionLoads(rig);
  const rows = rowsFromEach(positions, rig.fixtures.size, rowsOfPosition);
  const fixtures = positions.flatMap(({ units }) => units.map(({ fixture }) => fixture));
  const cautions = [...plainCautions(standing.loads.positionCautions), ...cautionLines(rig, fixtures, standing)];
  return { kind: 'positions', columns: COLUMNS, ...rows, foot: [...cautions, ...findingLines(standing)] };
}

function* rowsOfPosition({ position, units, kilograms, unknown }: PositionLoad): Generator<readonly SheetCell[]> {
  // Nothing, rather than 0, where not one unit is known.
  const sum = unknown.length === units.length ? null : rounded(kilograms, 2);
  for (const [at, { fixture, kilograms: own }] of units.entries()) {
    const last = at === units.length - 1;
    const sums = last ? [sum, unknown.length] : [null, null];
    yield [position, fixture.unit, fixture.channel, fixture.type, fixture.mode, own, ...sums];
  }
}
